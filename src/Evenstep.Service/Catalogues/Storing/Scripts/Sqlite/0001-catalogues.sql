-- Every change to any catalogue raises the revision by one, so that whoever knows an earlier one can tell that something changed.
CREATE TABLE shelf (
    only_row INTEGER NOT NULL PRIMARY KEY CHECK (only_row = 1),
    revision INTEGER NOT NULL
);

INSERT INTO shelf (only_row, revision) VALUES (1, 0);

-- The content comes last, so that a list of the versions need not read it.
CREATE TABLE catalogues (
    owner TEXT NOT NULL,
    id TEXT NOT NULL,
    version TEXT NOT NULL,
    revision INTEGER NOT NULL,
    content BLOB NOT NULL,
    PRIMARY KEY (owner, id)
);
