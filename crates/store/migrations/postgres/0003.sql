-- The first form that a shop in a PostgreSQL database had: the tables of the third form of a file. Instants are whole microseconds
-- since 1970 in UTC; quantities are the text that was typed. Texts are ordered by their bytes, as in a file, so that both give the
-- same answers. What was written stays: a correction is a further row, and the triggers hold other programs to it too.

-- What marks the tables as ours, and their form.
CREATE TABLE form (
    one         BIGINT PRIMARY KEY CHECK (one = 1),
    application BIGINT NOT NULL,
    version     BIGINT NOT NULL
);

INSERT INTO form VALUES (1, 1332309111, 0);

CREATE TABLE setting (
    number    BIGINT PRIMARY KEY CHECK (number >= 1),
    name      TEXT COLLATE "C" NOT NULL,
    zone      TEXT COLLATE "C" NOT NULL,
    units     TEXT COLLATE "C" NOT NULL,
    hours_s   DOUBLE PRECISION NOT NULL CHECK (hours_s <> 'NaN'),
    cold_k    DOUBLE PRECISION CHECK (cold_k <> 'NaN'),
    usual_k   DOUBLE PRECISION CHECK (usual_k <> 'NaN'),
    warm_k    DOUBLE PRECISION CHECK (warm_k <> 'NaN'),
    recorded  BIGINT NOT NULL,
    said_by   TEXT COLLATE "C" NOT NULL
);

CREATE TABLE machine (
    id TEXT COLLATE "C" PRIMARY KEY
);

-- name, kind and points are read from the text once, so that a list of machines need not read every chart.
CREATE TABLE chart_revision (
    machine   TEXT COLLATE "C" NOT NULL REFERENCES machine (id),
    number    BIGINT NOT NULL CHECK (number >= 1),
    name      TEXT COLLATE "C" NOT NULL,
    kind      TEXT COLLATE "C",
    points    BIGINT NOT NULL,
    sha256    TEXT COLLATE "C" NOT NULL,
    recorded  BIGINT NOT NULL,
    said_by   TEXT COLLATE "C" NOT NULL,
    text      TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (machine, number)
);

CREATE TABLE oil_revision (
    id                TEXT COLLATE "C" NOT NULL,
    number            BIGINT NOT NULL CHECK (number >= 1),
    recorded          BIGINT NOT NULL,
    said_by           TEXT COLLATE "C" NOT NULL,
    place             BIGINT NOT NULL,
    name              TEXT COLLATE "C" NOT NULL,
    family            TEXT COLLATE "C" NOT NULL,
    symbol            TEXT COLLATE "C",
    v40               TEXT COLLATE "C",
    v100              TEXT COLLATE "C",
    viscosity_index   DOUBLE PRECISION CHECK (viscosity_index <> 'NaN'),
    density           TEXT COLLATE "C",
    pour_point        TEXT COLLATE "C",
    flash_point       TEXT COLLATE "C",
    ep_sulphur        TEXT COLLATE "C" NOT NULL,
    detergent         TEXT COLLATE "C" NOT NULL,
    tackifier         TEXT COLLATE "C" NOT NULL,
    friction_modifier TEXT COLLATE "C" NOT NULL,
    fatty             TEXT COLLATE "C" NOT NULL,
    solids            TEXT COLLATE "C" NOT NULL,
    copper_strip      TEXT COLLATE "C",
    thickener         TEXT COLLATE "C",
    nlgi              TEXT COLLATE "C",
    base_v40          TEXT COLLATE "C",
    packs             TEXT COLLATE "C" NOT NULL,
    stock             TEXT COLLATE "C",
    stock_mass        TEXT COLLATE "C",
    note              TEXT COLLATE "C",
    PRIMARY KEY (id, number)
);

CREATE TABLE can_revision (
    id        TEXT COLLATE "C" NOT NULL,
    number    BIGINT NOT NULL CHECK (number >= 1),
    recorded  BIGINT NOT NULL,
    said_by   TEXT COLLATE "C" NOT NULL,
    place     BIGINT NOT NULL,
    name      TEXT COLLATE "C",
    oil       TEXT COLLATE "C",
    stroke    TEXT COLLATE "C",
    note      TEXT COLLATE "C",
    PRIMARY KEY (id, number)
);

-- machine and point repeat what subject says, so that indexes can find them.
CREATE TABLE entry (
    id              BIGINT PRIMARY KEY,
    happened        BIGINT NOT NULL,
    recorded        BIGINT NOT NULL,
    zone            TEXT COLLATE "C" NOT NULL,
    said_by         TEXT COLLATE "C" NOT NULL,
    kind            TEXT COLLATE "C" NOT NULL,
    subject         TEXT COLLATE "C" NOT NULL,
    machine         TEXT COLLATE "C" REFERENCES machine (id),
    point           TEXT COLLATE "C",
    body            TEXT COLLATE "C" NOT NULL,
    body_version    BIGINT NOT NULL,
    supersedes      BIGINT UNIQUE REFERENCES entry (id),
    idempotency_key TEXT COLLATE "C" NOT NULL UNIQUE
);

CREATE INDEX entry_by_time ON entry (happened, id);
CREATE INDEX entry_by_kind ON entry (kind, happened, id);
CREATE INDEX entry_by_machine ON entry (machine, happened, id);
CREATE INDEX entry_by_machine_and_kind ON entry (machine, kind, happened, id);
CREATE INDEX entry_by_point ON entry (machine, point, happened, id);
CREATE INDEX entry_by_point_and_kind ON entry (machine, point, kind, happened, id);
CREATE INDEX entry_by_recording ON entry (recorded);

-- The last living act of each kind at each point: a projection of the logbook, never a source.
CREATE TABLE due (
    machine  TEXT COLLATE "C" NOT NULL,
    point    TEXT COLLATE "C" NOT NULL,
    kind     TEXT COLLATE "C" NOT NULL,
    happened BIGINT NOT NULL,
    entry    BIGINT NOT NULL REFERENCES entry (id),
    PRIMARY KEY (machine, point, kind)
);

CREATE TABLE picture (
    id        BIGINT PRIMARY KEY,
    machine   TEXT COLLATE "C" NOT NULL REFERENCES machine (id),
    name      TEXT COLLATE "C" NOT NULL,
    sha256    TEXT COLLATE "C" NOT NULL,
    taken     BIGINT,
    recorded  BIGINT NOT NULL,
    bytes     BYTEA    NOT NULL,
    UNIQUE (machine, name, sha256)
);

-- The fingerprint of each entry, so that a byte that changed on the disk is found.
CREATE TABLE fingerprint (
    entry  BIGINT PRIMARY KEY REFERENCES entry (id),
    sha256 TEXT COLLATE "C" NOT NULL
);

-- The small picture of each picture, made from it; pictures that were kept before have none until they are asked for.
CREATE TABLE thumbnail (
    picture BIGINT PRIMARY KEY REFERENCES picture (id),
    sha256  TEXT COLLATE "C" NOT NULL,
    bytes   BYTEA NOT NULL
);

CREATE FUNCTION stays() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '%', TG_ARGV[0] USING ERRCODE = 'integrity_constraint_violation';
END
$$;

CREATE TRIGGER entry_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON entry
FOR EACH STATEMENT EXECUTE FUNCTION stays('the logbook is append-only');

CREATE TRIGGER fingerprint_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON fingerprint
FOR EACH STATEMENT EXECUTE FUNCTION stays('the logbook is append-only');

CREATE TRIGGER chart_revision_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON chart_revision
FOR EACH STATEMENT EXECUTE FUNCTION stays('chart revisions are append-only');

CREATE TRIGGER oil_revision_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON oil_revision
FOR EACH STATEMENT EXECUTE FUNCTION stays('shelf revisions are append-only');

CREATE TRIGGER can_revision_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON can_revision
FOR EACH STATEMENT EXECUTE FUNCTION stays('shelf revisions are append-only');

CREATE TRIGGER setting_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON setting
FOR EACH STATEMENT EXECUTE FUNCTION stays('settings are append-only');
