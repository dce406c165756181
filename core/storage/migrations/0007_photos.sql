-- Photos of the day and of paper sheets: the link is a record like any other, the picture itself
-- lies beside it once, under its digest, and is no part of the journal. And the weighings of a hive
-- by day: a scale brings in one for every day of years.
CREATE TABLE photo (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    name TEXT NOT NULL,
    digest TEXT NOT NULL,
    width INTEGER NOT NULL,
    height INTEGER NOT NULL,
    size_bytes INTEGER NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    hive_id INTEGER REFERENCES hive (id),
    of_sheet TEXT,
    note TEXT
) STRICT;
-- next
CREATE INDEX photo_hive ON photo (hive_id);
-- next
CREATE INDEX photo_yard ON photo (yard_id);
-- next
CREATE INDEX photo_day ON photo (on_day);
-- next
CREATE TABLE picture (
    digest TEXT PRIMARY KEY,
    bytes BLOB NOT NULL
) STRICT;
-- next
CREATE INDEX hive_weighing_day ON hive_weighing (hive_id, on_day);
