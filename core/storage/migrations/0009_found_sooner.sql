-- A table of a scale names a hive in each of its hundred thousand rows.
CREATE INDEX hive_mark ON hive (mark);
-- next
CREATE INDEX hive_move_from_mark ON hive_move (from_mark);
-- next
-- When a queen was seen last is asked of every colony; most looks do not see her.
CREATE INDEX inspection_queen_seen ON inspection (hive_id, visit_id) WHERE queen_seen = 1;
