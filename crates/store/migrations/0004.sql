-- The fingerprints of the rows that had none: settings, shelf, and by whom and when charts and pictures were kept. What was kept
-- before gets its own when the file is brought to this form. of_row is the key of the row, a list in JSON.

CREATE TABLE seal (
    of_table TEXT NOT NULL,
    of_row   TEXT NOT NULL,
    sha256   TEXT NOT NULL,
    PRIMARY KEY (of_table, of_row)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER seal_is_never_changed BEFORE UPDATE ON seal
BEGIN SELECT RAISE(ABORT, 'fingerprints are append-only'); END;

CREATE TRIGGER seal_is_never_removed BEFORE DELETE ON seal
BEGIN SELECT RAISE(ABORT, 'fingerprints are append-only'); END;
