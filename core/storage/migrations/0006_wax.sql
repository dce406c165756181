-- The wax bench: raw wax to blocks, blocks to candles, wishes and evenings, propolis, comb built in
-- jars.
CREATE TABLE wax_batch (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    on_day TEXT NOT NULL,
    source TEXT NOT NULL,
    state TEXT,
    shade TEXT,
    raw_g INTEGER,
    raw_to_g INTEGER,
    raw_how TEXT,
    combs INTEGER,
    frame_kind_id INTEGER REFERENCES frame_kind (id),
    kept TEXT,
    kept_since TEXT,
    reason TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE wax_source (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    batch_id INTEGER NOT NULL REFERENCES wax_batch (id),
    run_id INTEGER REFERENCES extraction (id),
    raw_wax_id INTEGER REFERENCES raw_wax (id),
    box_id INTEGER REFERENCES box (id),
    mass_g INTEGER,
    mass_to_g INTEGER,
    mass_how TEXT
) STRICT;
-- next
CREATE TABLE wax_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    batch_id INTEGER NOT NULL REFERENCES wax_batch (id),
    on_day TEXT NOT NULL,
    work TEXT NOT NULL,
    put_in_g INTEGER,
    put_in_to_g INTEGER,
    put_in_how TEXT,
    came_out_g INTEGER,
    came_out_to_g INTEGER,
    came_out_how TEXT,
    bucket_id INTEGER REFERENCES bucket (id),
    into_batch_id INTEGER REFERENCES wax_batch (id),
    hive_id INTEGER REFERENCES hive (id),
    temperature_tenth_c INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE heat_session (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    begun TEXT NOT NULL,
    off_at TEXT,
    what_heated TEXT NOT NULL,
    batch_id INTEGER REFERENCES wax_batch (id),
    temperature_tenth_c INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE wax_block (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    batch_id INTEGER REFERENCES wax_batch (id),
    on_day TEXT NOT NULL,
    shade TEXT NOT NULL,
    mass_g INTEGER,
    mass_to_g INTEGER,
    mass_how TEXT,
    supplier TEXT,
    note TEXT,
    from_candles INTEGER
) STRICT;
-- next
CREATE TABLE wax_use (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    block_id INTEGER NOT NULL REFERENCES wax_block (id),
    on_day TEXT NOT NULL,
    went TEXT NOT NULL,
    pour_id INTEGER REFERENCES pour (id),
    batch_id INTEGER REFERENCES wax_batch (id),
    mass_g INTEGER NOT NULL,
    how TEXT NOT NULL,
    price_hundredths INTEGER,
    buyer TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE mould (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    goods_kind_id INTEGER REFERENCES goods_kind (id),
    cavities INTEGER NOT NULL,
    volume_ml_millionths INTEGER,
    measured INTEGER,
    shape TEXT,
    diameter_tenth_mm INTEGER,
    tip_tenth_mm INTEGER,
    height_tenth_mm INTEGER,
    one_way INTEGER,
    made_of TEXT,
    wick TEXT,
    wick_length_tenth_mm INTEGER,
    cycles INTEGER,
    set_hours_millionths INTEGER,
    since TEXT NOT NULL,
    gone TEXT,
    note TEXT,
    one_weighs_g INTEGER
) STRICT;
-- next
CREATE TABLE burn_test (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    mould_id INTEGER NOT NULL REFERENCES mould (id),
    on_day TEXT NOT NULL,
    wick TEXT NOT NULL,
    block_id INTEGER REFERENCES wax_block (id),
    hours_millionths INTEGER,
    burnt_g INTEGER,
    burnt_to_g INTEGER,
    burnt_how TEXT,
    verdict TEXT NOT NULL,
    note TEXT
) STRICT;
-- next
CREATE TABLE pour (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    mould_id INTEGER NOT NULL REFERENCES mould (id),
    goods_kind_id INTEGER NOT NULL REFERENCES goods_kind (id),
    on_day TEXT NOT NULL,
    poured_at TEXT,
    good INTEGER NOT NULL,
    failed INTEGER,
    seconds INTEGER,
    returned_g INTEGER,
    returned_to_g INTEGER,
    returned_how TEXT,
    temperature_tenth_c INTEGER,
    wick TEXT,
    wick_used_tenth_mm INTEGER,
    released TEXT,
    trimmed TEXT,
    labelled TEXT,
    reason TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE candle_wish (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    goods_kind_id INTEGER NOT NULL REFERENCES goods_kind (id),
    count INTEGER NOT NULL,
    on_day TEXT NOT NULL,
    wanted_by TEXT NOT NULL,
    what_for TEXT,
    fair_id INTEGER REFERENCES fair (id),
    wish_order INTEGER,
    shades TEXT,
    dropped TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE free_evening (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    cycles INTEGER,
    finishing INTEGER,
    free INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE wick_stock (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    wick TEXT NOT NULL,
    bought_length_tenth_mm INTEGER,
    counted_length_tenth_mm INTEGER,
    supplier TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE propolis_move (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    went TEXT NOT NULL,
    mass_g INTEGER,
    mass_to_g INTEGER,
    mass_how TEXT,
    hive_id INTEGER REFERENCES hive (id),
    box_id INTEGER REFERENCES box (id),
    frozen TEXT,
    price_hundredths INTEGER,
    place TEXT,
    buyer TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE hive_project (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    what TEXT NOT NULL,
    pieces INTEGER NOT NULL,
    on_day TEXT NOT NULL,
    goods_kind_id INTEGER REFERENCES goods_kind (id),
    hive_id INTEGER REFERENCES hive (id),
    starter_in TEXT,
    put_on TEXT,
    taken_off TEXT,
    lidded_on TEXT,
    good INTEGER,
    net_g INTEGER,
    net_to_g INTEGER,
    net_how TEXT,
    wanted_by TEXT,
    fair_id INTEGER REFERENCES fair (id),
    code TEXT,
    reason TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE project_look (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    project_id INTEGER NOT NULL REFERENCES hive_project (id),
    on_day TEXT NOT NULL,
    built INTEGER,
    filled_pieces INTEGER,
    note TEXT
) STRICT;
-- next
CREATE INDEX wax_source_batch ON wax_source (batch_id);
-- next
CREATE INDEX wax_source_run ON wax_source (run_id);
-- next
CREATE INDEX wax_source_raw_wax ON wax_source (raw_wax_id);
-- next
CREATE INDEX wax_step_batch ON wax_step (batch_id);
-- next
CREATE INDEX wax_step_into ON wax_step (into_batch_id);
-- next
CREATE INDEX wax_block_batch ON wax_block (batch_id);
-- next
CREATE INDEX wax_use_block ON wax_use (block_id);
-- next
CREATE INDEX wax_use_pour ON wax_use (pour_id);
-- next
CREATE INDEX burn_test_mould ON burn_test (mould_id);
-- next
CREATE INDEX pour_mould ON pour (mould_id);
-- next
CREATE INDEX pour_kind ON pour (goods_kind_id);
-- next
CREATE INDEX project_look_project ON project_look (project_id);
