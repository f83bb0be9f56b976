"""Patterns are kept, a plan says what it was designed from, a part where it lies and what it takes.

Revision ID: 0003
"""

from alembic import op

revision = "0003"
down_revision = "0002"

PATTERNS = """
CREATE TABLE pattern (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    gauge TEXT NOT NULL,
    source TEXT NOT NULL,
    sizes TEXT NOT NULL,
    shares TEXT NOT NULL,
    put_away TEXT,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;
"""

PLANS = """
ALTER TABLE plan ADD COLUMN design TEXT;
ALTER TABLE plan ADD COLUMN pattern_id TEXT REFERENCES pattern (id) ON DELETE RESTRICT;
ALTER TABLE plan ADD COLUMN size TEXT NOT NULL DEFAULT '';
ALTER TABLE plan ADD COLUMN follows TEXT NOT NULL DEFAULT '';
CREATE INDEX plan_pattern ON plan (pattern_id);
"""

PARTS = """
ALTER TABLE part ADD COLUMN place TEXT NOT NULL DEFAULT '';
ALTER TABLE part ADD COLUMN in_round INTEGER NOT NULL DEFAULT 0;
ALTER TABLE part ADD COLUMN extras TEXT NOT NULL DEFAULT '[]';
ALTER TABLE part ADD COLUMN worked TEXT;
"""


def upgrade() -> None:
    for script in (PATTERNS, PLANS, PARTS):
        for statement in filter(str.strip, script.split(";")):
            op.execute(statement)
