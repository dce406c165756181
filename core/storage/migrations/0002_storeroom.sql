-- The storeroom: what was seen on the winter bench, what else there is, the freezer, dead colonies and
-- the plan for next season. New columns of older tables come last, so that steps made before this
-- one can still be taken back.
ALTER TABLE frame ADD COLUMN verdict TEXT;
-- next
ALTER TABLE frame ADD COLUMN reviewed TEXT;
-- next
ALTER TABLE frame ADD COLUMN stack TEXT;
-- next
ALTER TABLE frame ADD COLUMN mark TEXT;
-- next
ALTER TABLE frame ADD COLUMN note TEXT;
-- next
ALTER TABLE box_count ADD COLUMN verdict TEXT;
-- next
ALTER TABLE box_count ADD COLUMN frame_kind_id INTEGER REFERENCES frame_kind (id);
-- next
ALTER TABLE box ADD COLUMN wants_paint INTEGER;
-- next
ALTER TABLE hold ADD COLUMN because_id INTEGER REFERENCES hold (id);
-- next
CREATE TABLE box_review (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    box_id INTEGER NOT NULL REFERENCES box (id),
    on_day TEXT NOT NULL,
    expected INTEGER,
    found INTEGER NOT NULL,
    web INTEGER,
    scraped INTEGER,
    scrapings_g INTEGER,
    scrapings_to_g INTEGER,
    scrapings_how TEXT,
    propolis_g INTEGER,
    propolis_to_g INTEGER,
    propolis_how TEXT,
    wood TEXT,
    comb_years TEXT,
    line TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE raw_wax (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    source TEXT NOT NULL,
    review_id INTEGER REFERENCES box_review (id),
    box_id INTEGER REFERENCES box (id),
    frame_kind_id INTEGER REFERENCES frame_kind (id),
    combs INTEGER,
    clean_g INTEGER,
    clean_to_g INTEGER,
    clean_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE equipment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    item TEXT NOT NULL,
    name TEXT,
    frame_kind_id INTEGER REFERENCES frame_kind (id),
    on_hand INTEGER,
    in_repair INTEGER,
    lent INTEGER,
    litres INTEGER,
    coldest_tenth_c INTEGER,
    holds INTEGER,
    radius_tenth_mm INTEGER,
    rpm INTEGER,
    capacity_g INTEGER,
    since TEXT NOT NULL,
    note TEXT
) STRICT;
-- next
CREATE TABLE equipment_count (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    equipment_id INTEGER NOT NULL REFERENCES equipment (id),
    on_day TEXT NOT NULL,
    on_hand INTEGER NOT NULL,
    in_repair INTEGER,
    lent INTEGER,
    why_fewer TEXT
) STRICT;
-- next
CREATE TABLE freezer_round (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    freezer_id INTEGER NOT NULL REFERENCES equipment (id),
    in_day TEXT NOT NULL,
    in_at TEXT,
    hours INTEGER,
    out_day TEXT,
    out_at TEXT,
    temperature_tenth_c INTEGER,
    measured INTEGER,
    note TEXT,
    packed INTEGER
) STRICT;
-- next
CREATE TABLE freezer_load (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    round_id INTEGER NOT NULL REFERENCES freezer_round (id),
    box_id INTEGER REFERENCES box (id),
    frame_kind_id INTEGER NOT NULL REFERENCES frame_kind (id),
    frames INTEGER NOT NULL,
    stale TEXT,
    stale_why TEXT,
    faults TEXT
) STRICT;
-- next
CREATE TABLE dead_out (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    colony_id INTEGER NOT NULL REFERENCES colony (id),
    on_day TEXT NOT NULL,
    cluster TEXT,
    stores_near TEXT,
    brood_seen TEXT,
    frass INTEGER,
    wet INTEGER,
    queen INTEGER,
    droppings INTEGER,
    ropy INTEGER,
    scale INTEGER,
    mouse INTEGER,
    sample_kept INTEGER,
    cause TEXT,
    by TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE set_out (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    what_out TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    boxes TEXT,
    taken_in TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE season_plan (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    year INTEGER NOT NULL,
    colonies INTEGER,
    splits INTEGER,
    super_kind_id INTEGER REFERENCES box_kind (id),
    supers_per_colony_millionths INTEGER,
    frames_per_super INTEGER,
    undrawn_per_super INTEGER,
    brood_kind_id INTEGER REFERENCES box_kind (id),
    brood_per_split INTEGER,
    frames_per_split INTEGER,
    spare_bp INTEGER,
    frame_pack INTEGER,
    foundation_pack INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE plan_item (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    plan_id INTEGER NOT NULL REFERENCES season_plan (id),
    item TEXT NOT NULL,
    per_colony_millionths INTEGER,
    per_split_millionths INTEGER,
    spare_bp INTEGER,
    pack INTEGER
) STRICT;
-- next
CREATE TABLE frame_move (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    frame_id INTEGER NOT NULL REFERENCES frame (id),
    on_day TEXT NOT NULL,
    from_box_id INTEGER REFERENCES box (id),
    to_box_id INTEGER REFERENCES box (id),
    from_stack TEXT,
    to_stack TEXT
) STRICT;
-- next
CREATE INDEX frame_check_frame ON frame_check (frame_id);
-- next
CREATE INDEX box_review_box ON box_review (box_id);
-- next
CREATE INDEX raw_wax_review ON raw_wax (review_id);
-- next
CREATE INDEX equipment_count_equipment ON equipment_count (equipment_id);
-- next
CREATE INDEX freezer_load_round ON freezer_load (round_id);
-- next
CREATE INDEX freezer_load_box ON freezer_load (box_id);
-- next
CREATE INDEX dead_out_colony ON dead_out (colony_id);
-- next
CREATE INDEX plan_item_plan ON plan_item (plan_id);
-- next
CREATE INDEX box_move_to_hive ON box_move (to_hive_id);
-- next
CREATE INDEX box_move_from_hive ON box_move (from_hive_id);
-- next
CREATE INDEX frame_move_frame ON frame_move (frame_id);
-- next
CREATE INDEX frame_move_from_box ON frame_move (from_box_id);
-- next
CREATE INDEX frame_move_to_box ON frame_move (to_box_id);
-- next
CREATE INDEX hold_because ON hold (because_id);
-- next
CREATE INDEX hold_colony ON hold (colony_id);
-- next
CREATE INDEX hold_frame ON hold (frame_id);
