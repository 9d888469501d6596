-- The small picture of each picture, made from it; pictures that were kept before have none until they are asked for.

CREATE TABLE thumbnail (
    picture INTEGER PRIMARY KEY REFERENCES picture (id),
    sha256  TEXT    NOT NULL,
    bytes   BLOB    NOT NULL
) STRICT;
