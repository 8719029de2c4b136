-- What the person did, one deed at a time, with what is needed to take it back and to do it again; and what was taken back put away, since nothing leaves the book.

-- steps: what stood in each row before and after. fixed: why it can't be taken back, null when it can. hand: the window it was typed in.
-- address and field: where on the screens it shows.
-- taken_back: null while it stands done, else which taking back it was, the latest the highest. Only the latest deeds are kept here: it is no log.
CREATE TABLE deeds (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  name TEXT NOT NULL CHECK (length(name) > 0),
  job_id INTEGER,
  hand TEXT NOT NULL DEFAULT '',
  address TEXT NOT NULL,
  field TEXT NOT NULL,
  steps TEXT NOT NULL CHECK (json_valid(steps) AND json_type(steps) = 'array'),
  fixed TEXT,
  taken_back INTEGER CHECK (taken_back > 0)
) STRICT;
CREATE INDEX deeds_by_job ON deeds (job_id);

-- put_away: taken back, so in no list, and kept.
ALTER TABLE jobs ADD COLUMN put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1));
ALTER TABLE items ADD COLUMN put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1));
ALTER TABLE suppliers ADD COLUMN put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1));
ALTER TABLE rack_pieces ADD COLUMN put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1));

-- What was put down as come or cut and then taken back stands in the book and counts for nothing.
ALTER TABLE order_receipts ADD COLUMN taken_back_at TEXT;
ALTER TABLE order_cuts ADD COLUMN taken_back_at TEXT;

DROP TRIGGER orders_come_to_something;
CREATE TRIGGER orders_come_to_something BEFORE UPDATE OF cancelled_at ON orders
  WHEN EXISTS (SELECT 1 FROM order_receipts JOIN order_lines ON order_lines.id = order_receipts.line_id
      WHERE order_lines.order_id = OLD.id AND order_receipts.taken_back_at IS NULL)
    OR EXISTS (SELECT 1 FROM order_cuts JOIN order_lengths ON order_lengths.id = order_cuts.length_id
      WHERE order_lengths.order_id = OLD.id AND order_cuts.taken_back_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'an order that something came of is not cancelled'); END;

DROP TRIGGER order_receipts_in_bounds;
CREATE TRIGGER order_receipts_in_bounds BEFORE INSERT ON order_receipts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_receipts WHERE line_id = NEW.line_id AND taken_back_at IS NULL)
      > (SELECT count FROM order_lines WHERE id = NEW.line_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = NEW.line_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more comes than was ordered'); END;

DROP TRIGGER order_receipts_stand;
CREATE TRIGGER order_receipts_stand BEFORE UPDATE ON order_receipts
  WHEN OLD.line_id <> NEW.line_id OR OLD.count <> NEW.count OR OLD.received_on <> NEW.received_on OR OLD.added_at <> NEW.added_at
    OR (NEW.taken_back_at IS NULL AND NEW.count + (SELECT ifnull(sum(count), 0) FROM order_receipts
        WHERE line_id = NEW.line_id AND taken_back_at IS NULL AND id <> NEW.id) > (SELECT count FROM order_lines WHERE id = NEW.line_id))
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = NEW.line_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'what came is taken back or put back, and never altered'); END;

DROP TRIGGER order_cuts_in_bounds;
CREATE TRIGGER order_cuts_in_bounds BEFORE INSERT ON order_cuts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_cuts WHERE length_id = NEW.length_id AND taken_back_at IS NULL)
      > (SELECT count FROM order_lengths WHERE id = NEW.length_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = NEW.length_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more is cut than was planned'); END;

DROP TRIGGER order_cuts_stand;
CREATE TRIGGER order_cuts_stand BEFORE UPDATE ON order_cuts
  WHEN OLD.length_id <> NEW.length_id OR OLD.count <> NEW.count OR OLD.cut_on <> NEW.cut_on OR OLD.added_at <> NEW.added_at
    OR (NEW.taken_back_at IS NULL AND NEW.count + (SELECT ifnull(sum(count), 0) FROM order_cuts
        WHERE length_id = NEW.length_id AND taken_back_at IS NULL AND id <> NEW.id) > (SELECT count FROM order_lengths WHERE id = NEW.length_id))
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = NEW.length_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'what was cut is taken back or put back, and never altered'); END;

-- A piece that left the rack may come back as it left: that was taken back. Nothing else of its leaving is altered.
DROP TRIGGER rack_pieces_keep_what_they_are;
CREATE TRIGGER rack_pieces_keep_what_they_are BEFORE UPDATE ON rack_pieces
  WHEN OLD.item_id <> NEW.item_id OR OLD.added_on <> NEW.added_on OR OLD.sample < NEW.sample
    OR (OLD.left_on IS NOT NULL AND NEW.left_on IS NOT NULL AND (OLD.left_on IS NOT NEW.left_on OR OLD.left_why IS NOT NEW.left_why))
BEGIN SELECT RAISE (ABORT, 'a piece stays what it is, and one that left the rack has left it'); END;

-- A piece that is put away is kept for no order.
DROP TRIGGER order_rack_once;
CREATE TRIGGER order_rack_once BEFORE INSERT ON order_rack
  WHEN (SELECT left_on IS NOT NULL OR put_away = 1 FROM rack_pieces WHERE id = NEW.piece_id)
    OR EXISTS (SELECT 1 FROM order_rack AS other JOIN order_lengths ON order_lengths.id = other.length_id
      JOIN orders ON orders.id = order_lengths.order_id WHERE other.piece_id = NEW.piece_id AND orders.cancelled_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'a piece on the rack is kept for one order at a time'); END;
