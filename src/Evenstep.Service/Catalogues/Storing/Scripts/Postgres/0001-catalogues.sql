-- Every change to any catalogue raises the revision by one, so that whoever knows an earlier one can tell that something changed.
CREATE TABLE shelf (
    only_row integer NOT NULL PRIMARY KEY CHECK (only_row = 1),
    revision bigint NOT NULL
);

INSERT INTO shelf (only_row, revision) VALUES (1, 0);

CREATE TABLE catalogues (
    owner text NOT NULL,
    id text NOT NULL,
    version text NOT NULL,
    revision bigint NOT NULL,
    content bytea NOT NULL,
    PRIMARY KEY (owner, id)
);
