-- The first shape of a season file. Every table that an action may write has an INTEGER PRIMARY KEY
-- AUTOINCREMENT, no CASCADE and no trigger, so that the journal's changesets hold every change
-- (DEVELOPERS.md, "The journal"). Statements are parted by the line "-- next".
CREATE TABLE file_info (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    min_reader INTEGER NOT NULL,
    made_by TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE schema_step (
    step INTEGER PRIMARY KEY,
    name TEXT NOT NULL,
    digest TEXT NOT NULL,
    program TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE journal (
    seq INTEGER PRIMARY KEY AUTOINCREMENT,
    at TEXT NOT NULL,
    kind TEXT NOT NULL,
    action TEXT NOT NULL,
    line TEXT NOT NULL,
    why TEXT,
    sheet TEXT,
    of INTEGER,
    stands INTEGER NOT NULL,
    changes BLOB NOT NULL,
    digest TEXT NOT NULL
) STRICT;
-- next
CREATE INDEX journal_stands ON journal (stands, seq);
-- next
CREATE TABLE season_info (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    invented INTEGER
) STRICT;
-- next
CREATE TABLE frame_kind (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    code TEXT NOT NULL,
    name TEXT NOT NULL,
    family TEXT,
    top_bar_length_tenth_mm INTEGER,
    top_bar_width_tenth_mm INTEGER,
    top_bar_thickness_tenth_mm INTEGER,
    height_tenth_mm INTEGER,
    bottom_bar_length_tenth_mm INTEGER,
    spacing_tenth_mm INTEGER,
    comb_width_tenth_mm INTEGER,
    comb_height_tenth_mm INTEGER,
    source TEXT
) STRICT;
-- next
CREATE TABLE box_kind (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    code TEXT NOT NULL,
    name TEXT NOT NULL,
    family TEXT,
    frames_nominal INTEGER,
    outer_length_tenth_mm INTEGER,
    outer_width_tenth_mm INTEGER,
    outer_height_tenth_mm INTEGER,
    inner_length_tenth_mm INTEGER,
    inner_width_tenth_mm INTEGER,
    rest_depth_tenth_mm INTEGER,
    bee_space TEXT,
    takes_id INTEGER REFERENCES frame_kind (id),
    source TEXT
) STRICT;
-- next
CREATE TABLE yard (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    walk_order INTEGER NOT NULL,
    place TEXT,
    registration TEXT,
    extract_by TEXT,
    winter_need_g INTEGER,
    usual_super_id INTEGER REFERENCES box_kind (id),
    since TEXT NOT NULL,
    closed TEXT
) STRICT;
-- next
CREATE TABLE hive (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    yard_id INTEGER NOT NULL REFERENCES yard (id),
    mark TEXT NOT NULL,
    stand_order INTEGER NOT NULL,
    tare_g INTEGER,
    tare_to_g INTEGER,
    tare_how TEXT,
    excluder_above INTEGER,
    note TEXT,
    since TEXT NOT NULL,
    closed TEXT
) STRICT;
-- next
CREATE TABLE colony (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    since TEXT NOT NULL,
    origin TEXT NOT NULL,
    mother_id INTEGER REFERENCES colony (id),
    ended TEXT,
    ending TEXT,
    note TEXT,
    united_into_id INTEGER REFERENCES colony (id)
) STRICT;
-- next
CREATE TABLE visit (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    yard_id INTEGER NOT NULL REFERENCES yard (id),
    on_day TEXT NOT NULL,
    begun TEXT,
    ended TEXT,
    all_line TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE inspection (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    visit_id INTEGER NOT NULL REFERENCES visit (id),
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    looked TEXT NOT NULL,
    queen_seen INTEGER,
    eggs INTEGER,
    open_brood INTEGER,
    capped_brood INTEGER,
    brood_tenths INTEGER,
    brood_to_tenths INTEGER,
    brood_how TEXT,
    stores_tenths INTEGER,
    stores_to_tenths INTEGER,
    stores_how TEXT,
    seams_tenths INTEGER,
    seams_to_tenths INTEGER,
    seams_how TEXT,
    queen_cells INTEGER,
    queen_cells_to INTEGER,
    queen_cells_how TEXT,
    cell_state TEXT,
    cells_left INTEGER,
    cells_left_to INTEGER,
    cells_left_how TEXT,
    temper INTEGER,
    heft TEXT,
    come_back INTEGER,
    note TEXT,
    line TEXT
) STRICT;
-- next
CREATE TABLE finding (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    inspection_id INTEGER REFERENCES inspection (id),
    on_day TEXT NOT NULL,
    what TEXT NOT NULL,
    method TEXT NOT NULL,
    mites INTEGER,
    mites_to INTEGER,
    mites_how TEXT,
    bees INTEGER,
    bees_to INTEGER,
    bees_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE feeding (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    inspection_id INTEGER REFERENCES inspection (id),
    on_day TEXT NOT NULL,
    given_g INTEGER,
    given_to_g INTEGER,
    given_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE box (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind_id INTEGER NOT NULL REFERENCES box_kind (id),
    mark TEXT,
    condition TEXT NOT NULL,
    place TEXT NOT NULL,
    hive_id INTEGER REFERENCES hive (id),
    level INTEGER,
    stack TEXT,
    since TEXT NOT NULL,
    note TEXT
) STRICT;
-- next
CREATE TABLE box_move (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    box_id INTEGER NOT NULL REFERENCES box (id),
    on_day TEXT NOT NULL,
    from_place TEXT,
    from_hive_id INTEGER REFERENCES hive (id),
    from_level INTEGER,
    to_place TEXT NOT NULL,
    to_hive_id INTEGER REFERENCES hive (id),
    to_level INTEGER,
    inspection_id INTEGER REFERENCES inspection (id),
    from_stack TEXT,
    to_stack TEXT,
    from_under INTEGER
) STRICT;
-- next
CREATE TABLE box_look (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    box_id INTEGER NOT NULL REFERENCES box (id),
    on_day TEXT NOT NULL,
    inspection_id INTEGER REFERENCES inspection (id),
    frames INTEGER,
    capped_tenths INTEGER,
    capped_to_tenths INTEGER,
    capped_how TEXT,
    filled_bp INTEGER,
    filled_to_bp INTEGER,
    filled_how TEXT,
    to_fork_bp INTEGER,
    to_fork_to_bp INTEGER,
    to_fork_how TEXT,
    water_bp INTEGER,
    brood_in INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE frame (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind_id INTEGER NOT NULL REFERENCES frame_kind (id),
    box_id INTEGER REFERENCES box (id),
    position INTEGER,
    comb TEXT,
    drawn_year INTEGER,
    wet INTEGER,
    filled_a_bp INTEGER,
    filled_b_bp INTEGER,
    capped_bp INTEGER,
    faults TEXT,
    frozen TEXT,
    retired TEXT,
    retired_on TEXT
) STRICT;
-- next
CREATE TABLE box_count (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    box_id INTEGER NOT NULL REFERENCES box (id),
    on_day TEXT NOT NULL,
    occasion TEXT NOT NULL,
    comb TEXT,
    faults TEXT,
    frames INTEGER NOT NULL
) STRICT;
-- next
CREATE TABLE frame_check (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    frame_id INTEGER REFERENCES frame (id),
    box_id INTEGER REFERENCES box (id),
    on_day TEXT NOT NULL,
    occasion TEXT NOT NULL,
    how_many INTEGER,
    faults TEXT,
    verdict TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE constant (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    since TEXT NOT NULL,
    value_millionths INTEGER NOT NULL,
    source TEXT
) STRICT;
-- next
CREATE TABLE pull_plan (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    for_day TEXT NOT NULL,
    winter_need_g INTEGER,
    feed_up_to_g INTEGER,
    min_capped_bp INTEGER,
    max_water_bp INTEGER,
    frames INTEGER,
    carry_g INTEGER,
    boxes INTEGER,
    clearer_boards INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE pull_line (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    plan_id INTEGER NOT NULL REFERENCES pull_plan (id),
    box_id INTEGER NOT NULL REFERENCES box (id),
    hive_id INTEGER NOT NULL REFERENCES hive (id),
    verdict TEXT NOT NULL,
    why TEXT,
    honey_g INTEGER,
    honey_to_g INTEGER,
    honey_how TEXT,
    spread_g INTEGER,
    forced INTEGER
) STRICT;
-- next
CREATE TABLE crop_note (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    year INTEGER NOT NULL,
    on_day TEXT,
    hive_id INTEGER REFERENCES hive (id),
    yard_id INTEGER REFERENCES yard (id),
    mass_g INTEGER,
    mass_to_g INTEGER,
    mass_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE extraction (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    on_day TEXT NOT NULL,
    yard_id INTEGER REFERENCES yard (id),
    begun TEXT,
    ended TEXT,
    room_tenth_c INTEGER,
    damp_bp INTEGER,
    cappings_g INTEGER,
    cappings_to_g INTEGER,
    cappings_how TEXT,
    scrapings_g INTEGER,
    scrapings_to_g INTEGER,
    scrapings_how TEXT,
    closed TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE extraction_box (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    box_id INTEGER REFERENCES box (id),
    hive_id INTEGER REFERENCES hive (id),
    known_as TEXT,
    frame_kind_id INTEGER REFERENCES frame_kind (id),
    frames INTEGER,
    filled_bp INTEGER,
    filled_to_bp INTEGER,
    filled_how TEXT,
    gross_g INTEGER,
    gross_to_g INTEGER,
    gross_how TEXT,
    wet_g INTEGER,
    wet_to_g INTEGER,
    wet_how TEXT
) STRICT;
-- next
CREATE TABLE spin_load (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    number INTEGER NOT NULL,
    on_day TEXT NOT NULL,
    spun_min INTEGER,
    ran TEXT,
    rpm INTEGER,
    start_offset_g INTEGER,
    end_offset_g INTEGER,
    doubt_g INTEGER
) STRICT;
-- next
CREATE TABLE load_box (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    load_id INTEGER NOT NULL REFERENCES spin_load (id),
    box_id INTEGER NOT NULL REFERENCES extraction_box (id),
    frames INTEGER NOT NULL
) STRICT;
-- next
CREATE TABLE bucket (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    mark TEXT NOT NULL,
    net_g INTEGER,
    net_to_g INTEGER,
    net_how TEXT,
    water_bp INTEGER,
    lidded INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE closing_share (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    extraction_id INTEGER NOT NULL REFERENCES extraction (id),
    hive_id INTEGER REFERENCES hive (id),
    mass_g INTEGER NOT NULL,
    how TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE hold (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    colony_id INTEGER REFERENCES colony (id),
    box_id INTEGER REFERENCES box (id),
    frame_id INTEGER REFERENCES frame (id),
    bucket_id INTEGER REFERENCES bucket (id),
    why TEXT NOT NULL,
    since TEXT NOT NULL,
    lifted TEXT,
    lifted_by TEXT,
    grounds TEXT,
    note TEXT
) STRICT;
-- next
CREATE INDEX hive_yard ON hive (yard_id);
-- next
CREATE INDEX colony_hive ON colony (hive_id);
-- next
CREATE INDEX visit_yard ON visit (yard_id);
-- next
CREATE INDEX inspection_visit ON inspection (visit_id);
-- next
CREATE INDEX inspection_hive ON inspection (hive_id);
-- next
CREATE INDEX finding_hive ON finding (hive_id);
-- next
CREATE INDEX finding_inspection ON finding (inspection_id);
-- next
CREATE INDEX feeding_hive ON feeding (hive_id);
-- next
CREATE INDEX feeding_inspection ON feeding (inspection_id);
-- next
CREATE INDEX box_hive ON box (hive_id);
-- next
CREATE INDEX box_move_box ON box_move (box_id);
-- next
CREATE INDEX box_move_inspection ON box_move (inspection_id);
-- next
CREATE INDEX box_look_box ON box_look (box_id);
-- next
CREATE INDEX frame_box ON frame (box_id);
-- next
CREATE INDEX box_count_box ON box_count (box_id);
-- next
CREATE INDEX frame_check_box ON frame_check (box_id);
-- next
CREATE INDEX pull_line_plan ON pull_line (plan_id);
-- next
CREATE INDEX extraction_box_extraction ON extraction_box (extraction_id);
-- next
CREATE INDEX extraction_box_box ON extraction_box (box_id);
-- next
CREATE INDEX spin_load_extraction ON spin_load (extraction_id);
-- next
CREATE INDEX load_box_load ON load_box (load_id);
-- next
CREATE INDEX bucket_extraction ON bucket (extraction_id);
-- next
CREATE INDEX closing_share_extraction ON closing_share (extraction_id);
-- next
CREATE INDEX hold_box ON hold (box_id);
