-- Pegs on boxes, where each frame hung, what was set aside, when the gate was opened, clearer boards
-- under supers, the log of a day.
ALTER TABLE spin_load ADD COLUMN machine_id INTEGER REFERENCES equipment (id);
-- next
ALTER TABLE spin_load ADD COLUMN begun TEXT;
-- next
ALTER TABLE spin_load ADD COLUMN uncapping_min INTEGER;
-- next
CREATE TABLE peg (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    number INTEGER NOT NULL,
    box_id INTEGER REFERENCES box (id),
    hive_id INTEGER REFERENCES hive (id),
    on_day TEXT NOT NULL,
    off_day TEXT
) STRICT;
-- next
CREATE TABLE slot_frame (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    load_id INTEGER NOT NULL REFERENCES spin_load (id),
    slot INTEGER NOT NULL,
    box_id INTEGER REFERENCES extraction_box (id),
    heft TEXT
) STRICT;
-- next
CREATE TABLE set_aside (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    box_id INTEGER REFERENCES extraction_box (id),
    on_day TEXT NOT NULL,
    frames INTEGER NOT NULL,
    reason TEXT,
    became TEXT,
    became_on TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE gate_opening (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    on_day TEXT NOT NULL,
    at TEXT,
    after_load INTEGER NOT NULL,
    run_empty INTEGER
) STRICT;
-- next
CREATE TABLE clearer_board (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    on_day TEXT NOT NULL,
    off_day TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE room_day (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    who TEXT,
    hands INTEGER,
    begun TEXT,
    ended TEXT,
    room_cleaned INTEGER,
    hands_washed INTEGER,
    machine_dry INTEGER,
    machine_washed INTEGER,
    knife_checked INTEGER,
    note TEXT
) STRICT;
-- next
CREATE INDEX peg_number ON peg (number);
-- next
CREATE INDEX peg_box ON peg (box_id);
-- next
CREATE INDEX slot_frame_load ON slot_frame (load_id);
-- next
CREATE INDEX set_aside_extraction ON set_aside (extraction_id);
-- next
CREATE INDEX gate_opening_extraction ON gate_opening (extraction_id);
-- next
CREATE INDEX clearer_board_hive ON clearer_board (hive_id);
