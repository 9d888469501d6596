-- The fingerprint of each entry, so that a byte that changed on the disk is found. What was kept before gets its own when the file
-- is brought to this form.

CREATE TABLE fingerprint (
    entry  INTEGER PRIMARY KEY REFERENCES entry (id),
    sha256 TEXT    NOT NULL
) STRICT;

CREATE TRIGGER fingerprint_is_never_changed BEFORE UPDATE ON fingerprint
BEGIN SELECT RAISE(ABORT, 'the logbook is append-only'); END;

CREATE TRIGGER fingerprint_is_never_removed BEFORE DELETE ON fingerprint
BEGIN SELECT RAISE(ABORT, 'the logbook is append-only'); END;
