"""The first schema: the records, the wool book and the balances it adds up to.

Revision ID: 0001
"""

from alembic import op

revision = "0001"
down_revision = None

TABLES = """
CREATE TABLE settings (
    id TEXT PRIMARY KEY CHECK (id = 'settings'),
    length_unit TEXT NOT NULL,
    mass_unit TEXT NOT NULL,
    grist_unit TEXT NOT NULL,
    gauge_unit TEXT NOT NULL,
    decimal TEXT NOT NULL,
    paper TEXT NOT NULL,
    sureness_pct REAL NOT NULL,
    girth_mm INTEGER NOT NULL,
    losses TEXT NOT NULL,
    steps TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE data_version (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    version INTEGER NOT NULL
) STRICT;

CREATE TABLE person (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    measures TEXT NOT NULL,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE fleece (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    breed TEXT NOT NULL,
    fibre TEXT NOT NULL,
    yield_pct REAL,
    micron REAL,
    staple_mm INTEGER,
    colour TEXT NOT NULL,
    colour_name TEXT NOT NULL,
    source TEXT NOT NULL,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE yarn (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    fibre TEXT NOT NULL,
    plies INTEGER,
    twist TEXT NOT NULL,
    fleece_id TEXT REFERENCES fleece (id) ON DELETE RESTRICT,
    target_tex REAL,
    bought INTEGER NOT NULL CHECK (bought IN (0, 1)),
    ball_mg INTEGER,
    ball_mm INTEGER,
    colour TEXT NOT NULL,
    colour_name TEXT NOT NULL,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE plan (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    person_id TEXT REFERENCES person (id) ON DELETE RESTRICT,
    state TEXT NOT NULL,
    priority INTEGER NOT NULL,
    wanted_by TEXT,
    gauge TEXT,
    yarns TEXT NOT NULL,
    sureness_pct REAL,
    losses TEXT,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE part (
    id TEXT PRIMARY KEY,
    plan_id TEXT NOT NULL REFERENCES plan (id) ON DELETE RESTRICT,
    name TEXT NOT NULL,
    shape TEXT NOT NULL,
    position INTEGER NOT NULL,
    copies INTEGER NOT NULL,
    gauge TEXT,
    yarns TEXT NOT NULL,
    edges TEXT NOT NULL,
    shape_u_pct REAL NOT NULL,
    notes TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE holding (
    id TEXT PRIMARY KEY,
    kind TEXT NOT NULL,
    code TEXT NOT NULL,
    fleece_id TEXT REFERENCES fleece (id) ON DELETE RESTRICT,
    yarn_id TEXT REFERENCES yarn (id) ON DELETE RESTRICT,
    plan_id TEXT REFERENCES plan (id) ON DELETE RESTRICT,
    state TEXT,
    day TEXT,
    colour TEXT NOT NULL,
    colour_name TEXT NOT NULL,
    dye_lot TEXT NOT NULL,
    price TEXT NOT NULL,
    place TEXT NOT NULL,
    notes TEXT NOT NULL,
    put_away TEXT,
    shelf INTEGER NOT NULL GENERATED ALWAYS AS (
        kind IN ('skein', 'ball', 'left-over') AND put_away IS NULL
    ) VIRTUAL
) STRICT, WITHOUT ROWID;

CREATE TABLE balance (
    holding_id TEXT PRIMARY KEY REFERENCES holding (id) ON DELETE RESTRICT,
    shelf INTEGER NOT NULL CHECK (shelf IN (0, 1)),
    mg INTEGER NOT NULL,
    mm INTEGER NOT NULL,
    promised_mm INTEGER NOT NULL,
    tex REAL GENERATED ALWAYS AS (CASE WHEN mg > 0 AND mm > 0 THEN 1000.0 * mg / mm END) VIRTUAL,
    free_mm INTEGER NOT NULL GENERATED ALWAYS AS (mm - promised_mm) VIRTUAL
) STRICT, WITHOUT ROWID;

CREATE TABLE reading (
    id TEXT PRIMARY KEY,
    holding_id TEXT NOT NULL REFERENCES holding (id) ON DELETE RESTRICT,
    kind TEXT NOT NULL,
    value INTEGER NOT NULL,
    typed TEXT NOT NULL,
    unit TEXT NOT NULL,
    instrument TEXT NOT NULL,
    day TEXT NOT NULL,
    wool TEXT NOT NULL,
    finished INTEGER NOT NULL CHECK (finished IN (0, 1)),
    girth_mm INTEGER,
    turns REAL
) STRICT, WITHOUT ROWID;

CREATE TABLE event (
    seq INTEGER PRIMARY KEY,
    kind TEXT NOT NULL,
    day TEXT NOT NULL,
    note TEXT NOT NULL,
    undoes INTEGER UNIQUE REFERENCES event (seq) ON DELETE RESTRICT
) STRICT;

CREATE TABLE line (
    event_seq INTEGER NOT NULL REFERENCES event (seq) ON DELETE RESTRICT,
    position INTEGER NOT NULL,
    holding_id TEXT NOT NULL REFERENCES holding (id) ON DELETE RESTRICT,
    mg INTEGER NOT NULL,
    mm INTEGER NOT NULL,
    PRIMARY KEY (event_seq, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE promise (
    id TEXT PRIMARY KEY,
    plan_id TEXT NOT NULL REFERENCES plan (id) ON DELETE RESTRICT,
    part_id TEXT NOT NULL REFERENCES part (id) ON DELETE RESTRICT,
    holding_id TEXT NOT NULL REFERENCES holding (id) ON DELETE RESTRICT,
    mm INTEGER NOT NULL,
    role TEXT NOT NULL,
    state TEXT NOT NULL,
    why TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE errand (
    id TEXT PRIMARY KEY,
    text TEXT NOT NULL,
    kind TEXT NOT NULL,
    plan_id TEXT REFERENCES plan (id) ON DELETE RESTRICT,
    done TEXT
) STRICT, WITHOUT ROWID;
"""

LIST_ORDERS = """
CREATE UNIQUE INDEX holding_code ON holding (code);
CREATE INDEX holding_shelf_code ON holding (shelf, code);
CREATE INDEX holding_shelf_day ON holding (shelf, day);
CREATE INDEX holding_kind_code ON holding (kind, code);
CREATE INDEX balance_shelf_tex ON balance (shelf, tex);
CREATE INDEX balance_shelf_mm ON balance (shelf, mm);
CREATE INDEX balance_shelf_mg ON balance (shelf, mg);
CREATE INDEX balance_shelf_free ON balance (shelf, free_mm);
"""

LINKS = """
CREATE INDEX yarn_fleece ON yarn (fleece_id);
CREATE INDEX plan_person ON plan (person_id);
CREATE INDEX part_plan ON part (plan_id);
CREATE INDEX holding_fleece ON holding (fleece_id);
CREATE INDEX holding_yarn ON holding (yarn_id);
CREATE INDEX holding_plan ON holding (plan_id);
CREATE INDEX reading_holding ON reading (holding_id);
CREATE INDEX line_holding ON line (holding_id);
CREATE INDEX promise_plan ON promise (plan_id);
CREATE INDEX promise_part ON promise (part_id);
CREATE INDEX promise_holding ON promise (holding_id);
CREATE INDEX errand_plan ON errand (plan_id);
"""

SINKS = """
INSERT INTO data_version (id, version) VALUES (1, 1);
INSERT INTO holding (id, kind, code, colour, colour_name, dye_lot, price, place, notes)
SELECT column1, column1, column1, '', '', '', '', '', ''
FROM (VALUES ('come in'), ('waste'), ('given away'), ('weighing and moisture'));
INSERT INTO balance (holding_id, shelf, mg, mm, promised_mm) SELECT id, 0, 0, 0, 0 FROM holding;
"""


def upgrade() -> None:
    for script in (TABLES, LIST_ORDERS, LINKS, SINKS):
        for statement in filter(str.strip, script.split(";")):
            op.execute(statement)
