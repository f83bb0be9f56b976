"""Wheels, stints, marks, photos and weighings are kept; events say their step, yarns take turns.

Revision ID: 0004
"""

from alembic import op

revision = "0004"
down_revision = "0003"

NEW = """
CREATE TABLE wheel (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    kind TEXT NOT NULL,
    ratios TEXT NOT NULL,
    bobbin_mg INTEGER,
    notes TEXT NOT NULL,
    put_away TEXT
) STRICT, WITHOUT ROWID;
CREATE TABLE stint (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    work TEXT NOT NULL,
    minutes INTEGER NOT NULL,
    mg INTEGER,
    mm INTEGER,
    holding_id TEXT REFERENCES holding (id) ON DELETE RESTRICT,
    yarn_id TEXT REFERENCES yarn (id) ON DELETE RESTRICT,
    plan_id TEXT REFERENCES plan (id) ON DELETE RESTRICT,
    note TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX stint_holding ON stint (holding_id);
CREATE INDEX stint_yarn ON stint (yarn_id);
CREATE INDEX stint_plan ON stint (plan_id);
CREATE TABLE mark (
    id TEXT PRIMARY KEY,
    verdict TEXT NOT NULL,
    day TEXT NOT NULL,
    why TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE photo (
    id TEXT PRIMARY KEY,
    sha256 TEXT NOT NULL,
    media TEXT NOT NULL,
    bytes INTEGER NOT NULL,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    fleece_id TEXT REFERENCES fleece (id) ON DELETE RESTRICT,
    holding_id TEXT REFERENCES holding (id) ON DELETE RESTRICT,
    plan_id TEXT REFERENCES plan (id) ON DELETE RESTRICT,
    day TEXT,
    caption TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE progress (
    id TEXT PRIMARY KEY,
    plan_id TEXT NOT NULL REFERENCES plan (id) ON DELETE RESTRICT,
    part_id TEXT NOT NULL REFERENCES part (id) ON DELETE RESTRICT,
    piece INTEGER NOT NULL,
    rows INTEGER NOT NULL,
    day TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX progress_plan ON progress (plan_id);
CREATE INDEX progress_part ON progress (part_id);
CREATE TABLE weighing (
    id TEXT PRIMARY KEY,
    plan_id TEXT NOT NULL REFERENCES plan (id) ON DELETE RESTRICT,
    part_id TEXT NOT NULL REFERENCES part (id) ON DELETE RESTRICT,
    piece INTEGER NOT NULL,
    rows INTEGER NOT NULL,
    holding_id TEXT NOT NULL REFERENCES holding (id) ON DELETE RESTRICT,
    mg INTEGER NOT NULL,
    typed TEXT NOT NULL,
    scale_mg INTEGER NOT NULL,
    day TEXT NOT NULL,
    minute INTEGER
) STRICT, WITHOUT ROWID;
CREATE INDEX weighing_plan ON weighing (plan_id);
CREATE INDEX weighing_part ON weighing (part_id);
CREATE INDEX weighing_holding ON weighing (holding_id);
CREATE TABLE tap (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE device (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    token_sha256 TEXT NOT NULL,
    paired TEXT NOT NULL,
    seen TEXT NOT NULL,
    revoked TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX photo_sha256 ON photo (sha256);
CREATE INDEX photo_fleece ON photo (fleece_id);
CREATE INDEX photo_holding ON photo (holding_id);
CREATE INDEX photo_plan ON photo (plan_id);
"""

FIELDS = """
ALTER TABLE fleece ADD COLUMN blend TEXT NOT NULL DEFAULT '[]';
ALTER TABLE yarn ADD COLUMN blend TEXT NOT NULL DEFAULT '[]';
ALTER TABLE yarn ADD COLUMN spinning TEXT;
ALTER TABLE holding ADD COLUMN colours TEXT NOT NULL DEFAULT '[]';
ALTER TABLE holding ADD COLUMN look_again TEXT;
ALTER TABLE holding ADD COLUMN apart INTEGER NOT NULL DEFAULT 0 CHECK (apart IN (0, 1));
ALTER TABLE reading ADD COLUMN minute INTEGER;
ALTER TABLE event ADD COLUMN step TEXT NOT NULL DEFAULT '';
ALTER TABLE event ADD COLUMN passes INTEGER NOT NULL DEFAULT 0;
ALTER TABLE plan ADD COLUMN cast_on TEXT;
ALTER TABLE plan ADD COLUMN finished_on TEXT;
ALTER TABLE plan ADD COLUMN took TEXT NOT NULL DEFAULT '[]';
ALTER TABLE plan ADD COLUMN measured TEXT NOT NULL DEFAULT '[]';
ALTER TABLE part ADD COLUMN sequence TEXT;
ALTER TABLE promise ADD COLUMN position INTEGER NOT NULL DEFAULT 0;
ALTER TABLE promise ADD COLUMN from_inside INTEGER NOT NULL DEFAULT 0
    CHECK (from_inside IN (0, 1));
ALTER TABLE settings ADD COLUMN prices TEXT NOT NULL DEFAULT
    '{"join":1.0,"cut":2.0,"scrap":1.5,"scrap_below_mm":10000,"unlike":1.0}';
ALTER TABLE settings ADD COLUMN evening_minutes INTEGER NOT NULL DEFAULT 120;
"""


def upgrade() -> None:
    for script in (NEW, FIELDS):
        for statement in filter(str.strip, script.split(";")):
            # Sent as it stands: a colon in a default is no parameter.
            op.get_bind().exec_driver_sql(statement)
