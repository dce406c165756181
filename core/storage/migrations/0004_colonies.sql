-- Queens and their stays, moves of hives and colonies, weighings, feed, medicines and treatments, the
-- keeper's own lines and days, what he wants to be reminded of.
CREATE TABLE queen (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    reared INTEGER,
    mother_id INTEGER REFERENCES queen (id),
    origin TEXT NOT NULL,
    marked INTEGER,
    colour TEXT,
    number TEXT,
    clipped INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE queen_stay (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    queen_id INTEGER NOT NULL REFERENCES queen (id),
    colony_id INTEGER NOT NULL REFERENCES colony (id),
    since TEXT NOT NULL,
    until TEXT,
    left_how TEXT
) STRICT;
-- next
CREATE TABLE queen_wait (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    colony_id INTEGER REFERENCES colony (id),
    on_day TEXT NOT NULL,
    step TEXT NOT NULL,
    not_seen_on TEXT,
    over_day TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE queen_colour (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    digit INTEGER NOT NULL,
    colour TEXT NOT NULL,
    since TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE hive_move (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    on_day TEXT NOT NULL,
    from_yard_id INTEGER NOT NULL REFERENCES yard (id),
    from_mark TEXT NOT NULL,
    to_yard_id INTEGER NOT NULL REFERENCES yard (id),
    to_mark TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE colony_move (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    colony_id INTEGER NOT NULL REFERENCES colony (id),
    on_day TEXT NOT NULL,
    from_hive_id INTEGER NOT NULL REFERENCES hive (id),
    to_hive_id INTEGER NOT NULL REFERENCES hive (id),
    note TEXT
) STRICT;
-- next
CREATE TABLE hive_weighing (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    on_day TEXT NOT NULL,
    left_g INTEGER,
    left_to_g INTEGER,
    left_how TEXT,
    right_g INTEGER,
    right_to_g INTEGER,
    right_how TEXT,
    whole_g INTEGER,
    whole_to_g INTEGER,
    whole_how TEXT,
    without_g INTEGER,
    without_to_g INTEGER,
    without_how TEXT,
    note TEXT,
    inspection_id INTEGER REFERENCES inspection (id)
) STRICT;
-- next
CREATE TABLE feed_stock (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    kind TEXT NOT NULL,
    bought_g INTEGER,
    bought_to_g INTEGER,
    bought_how TEXT,
    counted_g INTEGER,
    counted_to_g INTEGER,
    counted_how TEXT,
    pack_g INTEGER,
    supplier TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE task (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    text TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    hive_id INTEGER REFERENCES hive (id),
    since TEXT NOT NULL,
    due TEXT,
    done TEXT,
    who TEXT
) STRICT;
-- next
CREATE TABLE quiet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    rule TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    hive_id INTEGER REFERENCES hive (id),
    since TEXT NOT NULL,
    until TEXT,
    reason TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE truck_item (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    item TEXT NOT NULL,
    how_many INTEGER,
    since TEXT NOT NULL,
    until TEXT
) STRICT;
-- next
CREATE TABLE medicine (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    active TEXT,
    batch TEXT,
    expires TEXT,
    supplier TEXT,
    bought_on TEXT,
    quantity_millionths INTEGER,
    unit TEXT,
    withdrawal TEXT,
    supers TEXT,
    in_hive_from_days INTEGER,
    in_hive_to_days INTEGER,
    wait_days INTEGER,
    warm_from_tenth_c INTEGER,
    warm_to_tenth_c INTEGER,
    prescribed_by TEXT,
    proof TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE treatment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    medicine_id INTEGER NOT NULL REFERENCES medicine (id),
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    colony_id INTEGER REFERENCES colony (id),
    on_day TEXT NOT NULL,
    amount_millionths INTEGER,
    out_day TEXT,
    supers_on INTEGER,
    supers_back TEXT,
    withdrawal TEXT,
    given_by TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE medicine_disposal (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    medicine_id INTEGER NOT NULL REFERENCES medicine (id),
    on_day TEXT NOT NULL,
    amount_millionths INTEGER,
    how TEXT NOT NULL,
    note TEXT
) STRICT;
-- next
CREATE TABLE mite_line (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    phase TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    since TEXT NOT NULL,
    per_100_millionths INTEGER NOT NULL,
    source TEXT
) STRICT;
-- next
CREATE TABLE phase_day (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    phase TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    since TEXT NOT NULL,
    month INTEGER NOT NULL,
    day_of_month INTEGER NOT NULL,
    source TEXT
) STRICT;
-- next
CREATE TABLE table_choice (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    since TEXT NOT NULL,
    lines_edition TEXT,
    lines_region TEXT,
    phases_region TEXT,
    medicines_region TEXT
) STRICT;
-- next
ALTER TABLE finding ADD COLUMN days_on_board INTEGER;
-- next
ALTER TABLE finding ADD COLUMN level TEXT;
-- next
ALTER TABLE finding ADD COLUMN box_id INTEGER REFERENCES box (id);
-- next
ALTER TABLE finding ADD COLUMN cells INTEGER;
-- next
ALTER TABLE finding ADD COLUMN cells_to INTEGER;
-- next
ALTER TABLE finding ADD COLUMN cells_how TEXT;
-- next
ALTER TABLE finding ADD COLUMN spotty INTEGER;
-- next
ALTER TABLE finding ADD COLUMN sunken_caps INTEGER;
-- next
ALTER TABLE finding ADD COLUMN holed_caps INTEGER;
-- next
ALTER TABLE finding ADD COLUMN ropes INTEGER;
-- next
ALTER TABLE finding ADD COLUMN scale_sticks INTEGER;
-- next
ALTER TABLE finding ADD COLUMN glue_smell INTEGER;
-- next
ALTER TABLE finding ADD COLUMN sour_smell INTEGER;
-- next
ALTER TABLE finding ADD COLUMN twisted_larvae INTEGER;
-- next
ALTER TABLE finding ADD COLUMN mummies INTEGER;
-- next
ALTER TABLE finding ADD COLUMN crippled_wings INTEGER;
-- next
ALTER TABLE finding ADD COLUMN soiled INTEGER;
-- next
ALTER TABLE feeding ADD COLUMN kind TEXT;
-- next
ALTER TABLE feeding ADD COLUMN packs INTEGER;
-- next
ALTER TABLE constant ADD COLUMN until TEXT;
-- next
ALTER TABLE hold ADD COLUMN treatment_id INTEGER REFERENCES treatment (id);
-- next
CREATE INDEX queen_mother ON queen (mother_id);
-- next
CREATE INDEX queen_stay_queen ON queen_stay (queen_id);
-- next
CREATE INDEX queen_stay_colony ON queen_stay (colony_id);
-- next
CREATE INDEX queen_wait_colony ON queen_wait (colony_id);
-- next
CREATE INDEX hive_move_hive ON hive_move (hive_id);
-- next
CREATE INDEX hive_move_from_yard ON hive_move (from_yard_id);
-- next
CREATE INDEX colony_move_colony ON colony_move (colony_id);
-- next
CREATE INDEX colony_move_from_hive ON colony_move (from_hive_id);
-- next
CREATE INDEX colony_mother ON colony (mother_id);
-- next
CREATE INDEX colony_united_into ON colony (united_into_id);
-- next
CREATE INDEX treatment_hive ON treatment (hive_id);
-- next
CREATE INDEX treatment_out_day ON treatment (out_day);
-- next
CREATE INDEX treatment_medicine ON treatment (medicine_id);
-- next
CREATE INDEX hive_weighing_hive ON hive_weighing (hive_id);
-- next
CREATE INDEX hive_weighing_inspection ON hive_weighing (inspection_id);
-- next
CREATE INDEX visit_on_day ON visit (on_day);
-- next
CREATE INDEX inspection_hive_visit ON inspection (hive_id, visit_id);
-- next
CREATE INDEX hold_treatment ON hold (treatment_id);
-- next
CREATE INDEX hold_why ON hold (why);
-- next
CREATE INDEX box_kind_place ON box (kind_id, place);
-- next
CREATE INDEX medicine_disposal_medicine ON medicine_disposal (medicine_id);
-- next
CREATE INDEX box_move_to_hive_day ON box_move (to_hive_id, on_day);
-- next
CREATE INDEX box_move_day ON box_move (on_day);
-- next
CREATE INDEX feeding_day ON feeding (on_day);
-- next
CREATE INDEX visit_yard_day ON visit (yard_id, on_day);
-- next
CREATE INDEX inspection_visit_looked ON inspection (visit_id, looked);
-- next
CREATE INDEX inspection_found_dead ON inspection (hive_id, visit_id) WHERE looked = 'found dead';
-- next
CREATE INDEX box_move_from_hive_day ON box_move (from_hive_id, on_day);
-- next
CREATE INDEX finding_hive_day ON finding (hive_id, on_day);
-- next
CREATE INDEX box_mark ON box (mark);
-- next
CREATE INDEX journal_line_hive ON journal (substr(line, instr(line, '"hive":"') + 8, 32))
WHERE kind = 'do' AND action IN ('write-line', 'look-into')
