"""python -m app: the same as the command tallyhank."""

import sys

from app.cli import main

sys.exit(main())
