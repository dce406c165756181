-- What a file is where it is no season to go on with: the season as it stood on a day that has
-- passed, or a what-if to plan in. The mark belongs to the file and not to what is recorded in it,
-- so it stands outside the journal.
CREATE TABLE copy_mark (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    what TEXT NOT NULL CHECK (what IN ('as it stood', 'what-if')),
    of_file TEXT NOT NULL,
    step INTEGER NOT NULL,
    digest TEXT NOT NULL,
    on_day TEXT NOT NULL,
    name TEXT
) STRICT
