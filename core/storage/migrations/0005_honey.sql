-- Honey after the gate: lots and their parents, water as it was read, what was done to it, fillings,
-- jars and lids, what went out, the fair table, labels.
CREATE TABLE lot (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    on_day TEXT NOT NULL,
    origin TEXT NOT NULL,
    net_g INTEGER,
    net_to_g INTEGER,
    net_how TEXT,
    tank_holds_g INTEGER,
    lidded INTEGER,
    strainer TEXT,
    colour TEXT,
    pfund_tenth_mm INTEGER,
    place TEXT,
    taste TEXT,
    supplier TEXT,
    note TEXT,
    reason TEXT,
    tank_wide_tenth_mm INTEGER
) STRICT;
-- next
CREATE TABLE lot_part (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    lot_id INTEGER NOT NULL REFERENCES lot (id),
    bucket_id INTEGER REFERENCES bucket (id),
    from_lot_id INTEGER REFERENCES lot (id),
    on_day TEXT NOT NULL,
    mass_g INTEGER NOT NULL,
    how TEXT NOT NULL
) STRICT;
-- next
CREATE TABLE water_reading (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    bucket_id INTEGER REFERENCES bucket (id),
    lot_id INTEGER REFERENCES lot (id),
    on_day TEXT NOT NULL,
    water_bp INTEGER,
    refractive_index_millionths INTEGER,
    brix_millionths INTEGER,
    temperature_tenth_c INTEGER,
    compensates INTEGER,
    corrected_bp INTEGER,
    instrument TEXT,
    calibrated TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE honey_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    bucket_id INTEGER REFERENCES bucket (id),
    lot_id INTEGER REFERENCES lot (id),
    on_day TEXT NOT NULL,
    work TEXT NOT NULL,
    temperature_tenth_c INTEGER,
    minutes_min INTEGER,
    after_g INTEGER,
    after_to_g INTEGER,
    after_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE honey_left (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    bucket_id INTEGER REFERENCES bucket (id),
    lot_id INTEGER REFERENCES lot (id),
    on_day TEXT NOT NULL,
    left_over_g INTEGER,
    left_over_to_g INTEGER,
    left_over_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE goods_kind (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    what TEXT NOT NULL,
    net_g INTEGER,
    brim_ml INTEGER,
    empty_g INTEGER,
    lid TEXT,
    price_hundredths INTEGER,
    note TEXT
) STRICT;
-- next
CREATE TABLE packing_stock (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    goods_kind_id INTEGER REFERENCES goods_kind (id),
    lid TEXT,
    bought INTEGER,
    counted INTEGER,
    supplier TEXT,
    note TEXT,
    day_so_far_millionths INTEGER
) STRICT;
-- next
CREATE TABLE goods_count (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    goods_kind_id INTEGER NOT NULL REFERENCES goods_kind (id),
    bottling_id INTEGER REFERENCES bottling (id),
    on_day TEXT NOT NULL,
    count INTEGER NOT NULL,
    why TEXT,
    day_so_far_millionths INTEGER
) STRICT;
-- next
CREATE TABLE bottling (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    bucket_id INTEGER REFERENCES bucket (id),
    lot_id INTEGER REFERENCES lot (id),
    on_day TEXT NOT NULL,
    code TEXT NOT NULL,
    best_before TEXT,
    drawn_g INTEGER,
    drawn_to_g INTEGER,
    drawn_how TEXT,
    lost_honey_g INTEGER,
    lost_honey_to_g INTEGER,
    lost_honey_how TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE bottled_jars (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    bottling_id INTEGER NOT NULL REFERENCES bottling (id),
    goods_kind_id INTEGER NOT NULL REFERENCES goods_kind (id),
    count INTEGER NOT NULL,
    spoiled INTEGER,
    weighed INTEGER,
    mean_net_millionths INTEGER,
    lightest_g INTEGER
) STRICT;
-- next
CREATE TABLE complaint (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    bottling_id INTEGER REFERENCES bottling (id),
    what TEXT NOT NULL,
    who TEXT,
    closed TEXT,
    became TEXT
) STRICT;
-- next
CREATE TABLE going_out (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    went TEXT NOT NULL,
    goods_kind_id INTEGER REFERENCES goods_kind (id),
    bottling_id INTEGER REFERENCES bottling (id),
    bucket_id INTEGER REFERENCES bucket (id),
    lot_id INTEGER REFERENCES lot (id),
    count INTEGER,
    mass_g INTEGER,
    mass_to_g INTEGER,
    mass_how TEXT,
    price_hundredths INTEGER,
    place TEXT,
    buyer TEXT,
    reason TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE fair (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    on_day TEXT NOT NULL,
    place TEXT,
    change_money_hundredths INTEGER,
    cash_hundredths INTEGER,
    closed TEXT,
    note TEXT
) STRICT;
-- next
CREATE TABLE fair_line (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    fair_id INTEGER NOT NULL REFERENCES fair (id),
    goods_kind_id INTEGER NOT NULL REFERENCES goods_kind (id),
    bottling_id INTEGER REFERENCES bottling (id),
    brought INTEGER NOT NULL,
    price_hundredths INTEGER,
    home INTEGER,
    broken INTEGER,
    given_away INTEGER
) STRICT;
-- next
CREATE TABLE label_text (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    since TEXT NOT NULL,
    producer TEXT,
    address TEXT,
    origin TEXT,
    months INTEGER,
    code_rule TEXT NOT NULL,
    flower TEXT,
    flower_grounds TEXT,
    more TEXT,
    limits_edition TEXT,
    label_region TEXT
) STRICT;
-- next
CREATE TABLE label_offset (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    grid TEXT NOT NULL,
    since TEXT NOT NULL,
    right_mm_millionths INTEGER NOT NULL,
    down_mm_millionths INTEGER NOT NULL
) STRICT;
-- next
CREATE TABLE kept_sheet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    on_day TEXT NOT NULL,
    what_sheet TEXT NOT NULL,
    subject TEXT NOT NULL,
    as_it_read TEXT
) STRICT;
-- next
ALTER TABLE bucket ADD COLUMN strainer TEXT;
-- next
ALTER TABLE bucket ADD COLUMN colour TEXT;
-- next
ALTER TABLE bucket ADD COLUMN pfund_tenth_mm INTEGER;
-- next
ALTER TABLE bucket ADD COLUMN place TEXT;
-- next
ALTER TABLE bucket ADD COLUMN taste TEXT;
-- next
ALTER TABLE bucket ADD COLUMN kind_id INTEGER REFERENCES equipment (id);
-- next
ALTER TABLE hold ADD COLUMN lot_id INTEGER REFERENCES lot (id);
-- next
ALTER TABLE hold ADD COLUMN bottling_id INTEGER REFERENCES bottling (id);
-- next
ALTER TABLE season_info ADD COLUMN currency TEXT;
-- next
ALTER TABLE equipment ADD COLUMN wide_tenth_mm INTEGER;
-- next
CREATE INDEX lot_part_lot ON lot_part (lot_id);
-- next
CREATE INDEX lot_part_bucket ON lot_part (bucket_id);
-- next
CREATE INDEX lot_part_from ON lot_part (from_lot_id);
-- next
CREATE INDEX bottling_bucket ON bottling (bucket_id);
-- next
CREATE INDEX bottling_lot ON bottling (lot_id);
-- next
CREATE INDEX bottled_jars_bottling ON bottled_jars (bottling_id);
-- next
CREATE INDEX going_out_bottling ON going_out (bottling_id);
-- next
CREATE INDEX going_out_bucket ON going_out (bucket_id);
-- next
CREATE INDEX going_out_lot ON going_out (lot_id);
-- next
CREATE INDEX honey_step_bucket ON honey_step (bucket_id);
-- next
CREATE INDEX honey_step_lot ON honey_step (lot_id);
-- next
CREATE INDEX honey_left_bucket ON honey_left (bucket_id);
-- next
CREATE INDEX honey_left_lot ON honey_left (lot_id);
-- next
CREATE INDEX complaint_bottling ON complaint (bottling_id);
-- next
CREATE INDEX fair_line_fair ON fair_line (fair_id);
-- next
CREATE INDEX fair_line_bottling ON fair_line (bottling_id);
-- next
CREATE INDEX water_reading_bucket ON water_reading (bucket_id);
-- next
CREATE INDEX water_reading_lot ON water_reading (lot_id);
