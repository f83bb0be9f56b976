"""Swatches are kept, and a gauge says which of them it was taken from.

Revision ID: 0002
"""

from alembic import op

revision = "0002"
down_revision = "0001"

SWATCHES = """
CREATE TABLE swatch (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    yarn_id TEXT REFERENCES yarn (id) ON DELETE RESTRICT,
    needle_mm REAL,
    pattern TEXT NOT NULL,
    worked TEXT,
    finished TEXT,
    weight_mg INTEGER,
    scale_mg INTEGER NOT NULL,
    whole_stitches REAL,
    unravelled REAL,
    thread_mm INTEGER,
    day TEXT,
    put_away TEXT,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX swatch_yarn ON swatch (yarn_id);
"""

GAUGES = """
UPDATE plan SET gauge = json_set(gauge, '$.swatch_id', NULL) WHERE gauge IS NOT NULL;
UPDATE part SET gauge = json_set(gauge, '$.swatch_id', NULL) WHERE gauge IS NOT NULL;
"""


def upgrade() -> None:
    for script in (SWATCHES, GAUGES):
        for statement in filter(str.strip, script.split(";")):
            op.execute(statement)
