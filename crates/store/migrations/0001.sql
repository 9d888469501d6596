-- The first form of the data file. Instants are whole microseconds since 1970 in UTC; quantities are the text that was typed.
-- What was written stays: a correction is a further row, and the triggers hold other programs to it too.

CREATE TABLE setting (
    number    INTEGER PRIMARY KEY CHECK (number >= 1),
    name      TEXT    NOT NULL,
    zone      TEXT    NOT NULL,
    units     TEXT    NOT NULL,
    hours_s   REAL    NOT NULL,
    cold_k    REAL,
    usual_k   REAL,
    warm_k    REAL,
    recorded  INTEGER NOT NULL,
    said_by   TEXT    NOT NULL
) STRICT;

CREATE TABLE machine (
    id TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;

-- name, kind and points are read from the text once, so that a list of machines need not read every chart.
CREATE TABLE chart_revision (
    machine   TEXT    NOT NULL REFERENCES machine (id),
    number    INTEGER NOT NULL CHECK (number >= 1),
    name      TEXT    NOT NULL,
    kind      TEXT,
    points    INTEGER NOT NULL,
    sha256    TEXT    NOT NULL,
    recorded  INTEGER NOT NULL,
    said_by   TEXT    NOT NULL,
    text      TEXT    NOT NULL,
    PRIMARY KEY (machine, number)
) STRICT;

CREATE TABLE oil_revision (
    id                TEXT    NOT NULL,
    number            INTEGER NOT NULL CHECK (number >= 1),
    recorded          INTEGER NOT NULL,
    said_by           TEXT    NOT NULL,
    place             INTEGER NOT NULL,
    name              TEXT    NOT NULL,
    family            TEXT    NOT NULL,
    symbol            TEXT,
    v40               TEXT,
    v100              TEXT,
    viscosity_index   REAL,
    density           TEXT,
    pour_point        TEXT,
    flash_point       TEXT,
    ep_sulphur        TEXT    NOT NULL,
    detergent         TEXT    NOT NULL,
    tackifier         TEXT    NOT NULL,
    friction_modifier TEXT    NOT NULL,
    fatty             TEXT    NOT NULL,
    solids            TEXT    NOT NULL,
    copper_strip      TEXT,
    thickener         TEXT,
    nlgi              TEXT,
    base_v40          TEXT,
    packs             TEXT    NOT NULL,
    stock             TEXT,
    stock_mass        TEXT,
    note              TEXT,
    PRIMARY KEY (id, number)
) STRICT;

CREATE TABLE can_revision (
    id        TEXT    NOT NULL,
    number    INTEGER NOT NULL CHECK (number >= 1),
    recorded  INTEGER NOT NULL,
    said_by   TEXT    NOT NULL,
    place     INTEGER NOT NULL,
    name      TEXT,
    oil       TEXT,
    stroke    TEXT,
    note      TEXT,
    PRIMARY KEY (id, number)
) STRICT;

-- machine and point repeat what subject says, so that indexes can find them.
CREATE TABLE entry (
    id              INTEGER PRIMARY KEY,
    happened        INTEGER NOT NULL,
    recorded        INTEGER NOT NULL,
    zone            TEXT    NOT NULL,
    said_by         TEXT    NOT NULL,
    kind            TEXT    NOT NULL,
    subject         TEXT    NOT NULL,
    machine         TEXT    REFERENCES machine (id),
    point           TEXT,
    body            TEXT    NOT NULL,
    body_version    INTEGER NOT NULL,
    supersedes      INTEGER UNIQUE REFERENCES entry (id),
    idempotency_key TEXT    NOT NULL UNIQUE
) STRICT;

CREATE INDEX entry_by_time ON entry (happened, id);
CREATE INDEX entry_by_kind ON entry (kind, happened, id);
CREATE INDEX entry_by_machine ON entry (machine, happened, id);
CREATE INDEX entry_by_machine_and_kind ON entry (machine, kind, happened, id);
CREATE INDEX entry_by_point ON entry (machine, point, happened, id);
CREATE INDEX entry_by_point_and_kind ON entry (machine, point, kind, happened, id);
CREATE INDEX entry_by_recording ON entry (recorded);

-- The last living act of each kind at each point: a projection of the logbook, never a source.
CREATE TABLE due (
    machine  TEXT    NOT NULL,
    point    TEXT    NOT NULL,
    kind     TEXT    NOT NULL,
    happened INTEGER NOT NULL,
    entry    INTEGER NOT NULL REFERENCES entry (id),
    PRIMARY KEY (machine, point, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE picture (
    id        INTEGER PRIMARY KEY,
    machine   TEXT    NOT NULL REFERENCES machine (id),
    name      TEXT    NOT NULL,
    sha256    TEXT    NOT NULL,
    taken     INTEGER,
    recorded  INTEGER NOT NULL,
    bytes     BLOB    NOT NULL,
    UNIQUE (machine, name, sha256)
) STRICT;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the logbook is append-only'); END;

CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the logbook is append-only'); END;

-- "INSERT OR REPLACE" removes rows without asking the trigger above.
CREATE TRIGGER entry_is_never_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id)
  OR EXISTS (SELECT 1 FROM entry WHERE idempotency_key = NEW.idempotency_key)
  OR EXISTS (SELECT 1 FROM entry WHERE supersedes = NEW.supersedes)
BEGIN SELECT RAISE(ABORT, 'the logbook is append-only'); END;

CREATE TRIGGER chart_revision_is_never_changed BEFORE UPDATE ON chart_revision
BEGIN SELECT RAISE(ABORT, 'chart revisions are append-only'); END;

CREATE TRIGGER chart_revision_is_never_removed BEFORE DELETE ON chart_revision
BEGIN SELECT RAISE(ABORT, 'chart revisions are append-only'); END;

CREATE TRIGGER oil_revision_is_never_changed BEFORE UPDATE ON oil_revision
BEGIN SELECT RAISE(ABORT, 'shelf revisions are append-only'); END;

CREATE TRIGGER oil_revision_is_never_removed BEFORE DELETE ON oil_revision
BEGIN SELECT RAISE(ABORT, 'shelf revisions are append-only'); END;

CREATE TRIGGER can_revision_is_never_changed BEFORE UPDATE ON can_revision
BEGIN SELECT RAISE(ABORT, 'shelf revisions are append-only'); END;

CREATE TRIGGER can_revision_is_never_removed BEFORE DELETE ON can_revision
BEGIN SELECT RAISE(ABORT, 'shelf revisions are append-only'); END;

CREATE TRIGGER setting_is_never_changed BEFORE UPDATE ON setting
BEGIN SELECT RAISE(ABORT, 'settings are append-only'); END;

CREATE TRIGGER setting_is_never_removed BEFORE DELETE ON setting
BEGIN SELECT RAISE(ABORT, 'settings are append-only'); END;
