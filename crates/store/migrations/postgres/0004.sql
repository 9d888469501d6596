-- The fingerprints of the rows that had none: settings, shelf, and by whom and when charts and pictures were kept. What was kept
-- before gets its own when the shop is brought to this form. of_row is the key of the row, a list in JSON.

CREATE TABLE seal (
    of_table TEXT COLLATE "C" NOT NULL,
    of_row   TEXT COLLATE "C" NOT NULL,
    sha256   TEXT COLLATE "C" NOT NULL,
    PRIMARY KEY (of_table, of_row)
);

CREATE TRIGGER seal_stays BEFORE UPDATE OR DELETE OR TRUNCATE ON seal
FOR EACH STATEMENT EXECUTE FUNCTION stays('fingerprints are append-only');
