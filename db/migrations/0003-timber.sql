-- Timber: what was ordered for which jobs, what came, what was cut, and what lies on the rack.

-- An order with its plan, frozen. pairs: braces cut two from one piece. The jobs, rows and lengths it is made of stand below.
CREATE TABLE orders (
  id INTEGER PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  placed_on TEXT NOT NULL CHECK (placed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  note TEXT NOT NULL DEFAULT '',
  cost_pence INTEGER NOT NULL CHECK (cost_pence >= 0),
  request TEXT NOT NULL CHECK (json_valid(request) AND json_type(request) = 'object'),
  plan TEXT NOT NULL CHECK (json_valid(plan) AND json_type(plan) = 'object'),
  pairs TEXT NOT NULL CHECK (json_valid(pairs) AND json_type(pairs) = 'array'),
  added_at TEXT NOT NULL,
  cancelled_at TEXT,
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
) STRICT;

-- stage_before: where a job stood that the order moved on to ordered, null for one that it left where it was.
CREATE TABLE order_jobs (
  order_id INTEGER NOT NULL REFERENCES orders (id),
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  stage_before TEXT CHECK (stage_before IN ('enquiry', 'surveyed', 'designed', 'quoted')),
  PRIMARY KEY (order_id, job_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX order_jobs_by_job ON order_jobs (job_id);

-- What is asked of the merchants: so many lengths of an item at a price each, tax left out.
CREATE TABLE order_lines (
  id INTEGER PRIMARY KEY,
  order_id INTEGER NOT NULL REFERENCES orders (id),
  item_id INTEGER NOT NULL REFERENCES items (id),
  supplier_id INTEGER REFERENCES suppliers (id),
  price_id INTEGER NOT NULL REFERENCES prices (id),
  length_mm REAL NOT NULL CHECK (length_mm > 0),
  count INTEGER NOT NULL CHECK (count > 0),
  price_pence INTEGER NOT NULL CHECK (price_pence >= 0)
) STRICT;
CREATE INDEX order_lines_by_order ON order_lines (order_id);
CREATE INDEX order_lines_by_item ON order_lines (item_id);

CREATE TABLE order_receipts (
  id INTEGER PRIMARY KEY,
  line_id INTEGER NOT NULL REFERENCES order_lines (id),
  count INTEGER NOT NULL CHECK (count > 0),
  received_on TEXT NOT NULL CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
) STRICT;
CREATE INDEX order_receipts_by_line ON order_receipts (line_id);

-- Lengths to be cut alike. cuts: [{ length, mark }], mm. left_from: the job that their offcuts are left from.
CREATE TABLE order_lengths (
  id INTEGER PRIMARY KEY,
  order_id INTEGER NOT NULL REFERENCES orders (id),
  item_id INTEGER NOT NULL REFERENCES items (id),
  source TEXT NOT NULL CHECK (source IN ('merchant', 'rack')),
  length_mm REAL NOT NULL CHECK (length_mm > 0),
  count INTEGER NOT NULL CHECK (count > 0),
  cuts TEXT NOT NULL CHECK (json_valid(cuts) AND json_type(cuts) = 'array'),
  offcut_mm REAL NOT NULL CHECK (offcut_mm >= 0),
  left_from INTEGER REFERENCES jobs (id)
) STRICT;
CREATE INDEX order_lengths_by_order ON order_lengths (order_id);
CREATE INDEX order_lengths_by_item ON order_lengths (item_id);

CREATE TABLE order_cuts (
  id INTEGER PRIMARY KEY,
  length_id INTEGER NOT NULL REFERENCES order_lengths (id),
  count INTEGER NOT NULL CHECK (count > 0),
  cut_on TEXT NOT NULL CHECK (cut_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
) STRICT;
CREATE INDEX order_cuts_by_length ON order_cuts (length_id);

-- Offcuts and whole lengths on the rack; one that left stays in the book with the day and the reason. job_id: the job it is left from.
CREATE TABLE rack_pieces (
  id INTEGER PRIMARY KEY,
  item_id INTEGER NOT NULL REFERENCES items (id),
  length_mm REAL NOT NULL CHECK (length_mm > 0),
  place TEXT NOT NULL DEFAULT '',
  job_id INTEGER REFERENCES jobs (id),
  note TEXT NOT NULL DEFAULT '',
  added_on TEXT NOT NULL CHECK (added_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  left_on TEXT CHECK (left_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  left_why TEXT CHECK (left_why IN ('cut up', 'scrapped', 'given away', 'not found')),
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1)),
  CHECK ((left_on IS NULL) = (left_why IS NULL))
) STRICT;
CREATE INDEX rack_pieces_by_item ON rack_pieces (item_id);
CREATE INDEX rack_pieces_by_job ON rack_pieces (job_id);
CREATE INDEX rack_pieces_there ON rack_pieces (id) WHERE left_on IS NULL;

-- The rack's pieces that an order's lengths are cut from: kept for it while it stands.
CREATE TABLE order_rack (
  length_id INTEGER NOT NULL REFERENCES order_lengths (id),
  piece_id INTEGER NOT NULL REFERENCES rack_pieces (id),
  PRIMARY KEY (length_id, piece_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX order_rack_by_piece ON order_rack (piece_id);

-- What became of every piece, a row each time. The job and the order are told by their numbers.
CREATE TABLE rack_moves (
  id INTEGER PRIMARY KEY,
  piece_id INTEGER NOT NULL REFERENCES rack_pieces (id),
  what TEXT NOT NULL CHECK (what IN ('in', 'out', 'moved', 'measured', 'counted')),
  length_mm REAL NOT NULL CHECK (length_mm > 0),
  place TEXT NOT NULL,
  why TEXT NOT NULL DEFAULT '',
  job_number TEXT,
  order_number TEXT,
  moved_on TEXT NOT NULL CHECK (moved_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
) STRICT;
CREATE INDEX rack_moves_by_piece ON rack_moves (piece_id);

-- Nothing leaves but a sample, and nothing of an order is ever altered; it can be cancelled, once.
CREATE TRIGGER orders_stand BEFORE UPDATE ON orders
  WHEN OLD.number IS NOT NEW.number OR OLD.placed_on IS NOT NEW.placed_on OR OLD.note IS NOT NEW.note OR OLD.cost_pence IS NOT NEW.cost_pence
    OR OLD.request IS NOT NEW.request OR OLD.plan IS NOT NEW.plan OR OLD.pairs IS NOT NEW.pairs OR OLD.added_at IS NOT NEW.added_at
    OR OLD.sample IS NOT NEW.sample OR OLD.cancelled_at IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'an order is cancelled or it stands, and is never altered'); END;

CREATE TRIGGER orders_stay BEFORE DELETE ON orders WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'an order never leaves the book'); END;

CREATE TRIGGER orders_come_to_something BEFORE UPDATE OF cancelled_at ON orders
  WHEN EXISTS (SELECT 1 FROM order_receipts JOIN order_lines ON order_lines.id = order_receipts.line_id WHERE order_lines.order_id = OLD.id)
    OR EXISTS (SELECT 1 FROM order_cuts JOIN order_lengths ON order_lengths.id = order_cuts.length_id WHERE order_lengths.order_id = OLD.id)
BEGIN SELECT RAISE (ABORT, 'an order that something came of is not cancelled'); END;

CREATE TRIGGER order_jobs_once BEFORE INSERT ON order_jobs
  WHEN EXISTS (SELECT 1 FROM order_jobs AS other JOIN orders ON orders.id = other.order_id
    WHERE other.job_id = NEW.job_id AND orders.cancelled_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'a job stands on one order at a time'); END;

CREATE TRIGGER order_jobs_stand BEFORE UPDATE ON order_jobs
BEGIN SELECT RAISE (ABORT, 'the jobs of an order are never altered'); END;

CREATE TRIGGER order_jobs_stay BEFORE DELETE ON order_jobs WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'the jobs of an order never leave the book'); END;

CREATE TRIGGER order_lines_stand BEFORE UPDATE ON order_lines
BEGIN SELECT RAISE (ABORT, 'a row of an order is never altered'); END;

CREATE TRIGGER order_lines_stay BEFORE DELETE ON order_lines WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'a row of an order never leaves the book'); END;

CREATE TRIGGER order_lengths_stand BEFORE UPDATE ON order_lengths
BEGIN SELECT RAISE (ABORT, 'a length of an order is never altered'); END;

CREATE TRIGGER order_lengths_stay BEFORE DELETE ON order_lengths WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'a length of an order never leaves the book'); END;

CREATE TRIGGER order_receipts_in_bounds BEFORE INSERT ON order_receipts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_receipts WHERE line_id = NEW.line_id)
      > (SELECT count FROM order_lines WHERE id = NEW.line_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = NEW.line_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more comes than was ordered'); END;

CREATE TRIGGER order_receipts_stand BEFORE UPDATE ON order_receipts
BEGIN SELECT RAISE (ABORT, 'what came is never altered'); END;

CREATE TRIGGER order_receipts_stay BEFORE DELETE ON order_receipts
  WHEN (SELECT orders.sample FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = OLD.line_id) = 0
BEGIN SELECT RAISE (ABORT, 'what came never leaves the book'); END;

CREATE TRIGGER order_cuts_in_bounds BEFORE INSERT ON order_cuts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_cuts WHERE length_id = NEW.length_id)
      > (SELECT count FROM order_lengths WHERE id = NEW.length_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = NEW.length_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more is cut than was planned'); END;

CREATE TRIGGER order_cuts_stand BEFORE UPDATE ON order_cuts
BEGIN SELECT RAISE (ABORT, 'what was cut is never altered'); END;

CREATE TRIGGER order_cuts_stay BEFORE DELETE ON order_cuts
  WHEN (SELECT orders.sample FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = OLD.length_id) = 0
BEGIN SELECT RAISE (ABORT, 'what was cut never leaves the book'); END;

CREATE TRIGGER order_rack_once BEFORE INSERT ON order_rack
  WHEN (SELECT left_on FROM rack_pieces WHERE id = NEW.piece_id) IS NOT NULL
    OR EXISTS (SELECT 1 FROM order_rack AS other JOIN order_lengths ON order_lengths.id = other.length_id
      JOIN orders ON orders.id = order_lengths.order_id WHERE other.piece_id = NEW.piece_id AND orders.cancelled_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'a piece on the rack is kept for one order at a time'); END;

CREATE TRIGGER order_rack_stand BEFORE UPDATE ON order_rack
BEGIN SELECT RAISE (ABORT, 'the pieces of an order are never altered'); END;

CREATE TRIGGER order_rack_stay BEFORE DELETE ON order_rack
  WHEN (SELECT orders.sample FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = OLD.length_id) = 0
BEGIN SELECT RAISE (ABORT, 'the pieces of an order never leave the book'); END;

CREATE TRIGGER rack_pieces_stay BEFORE DELETE ON rack_pieces WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'a piece of the rack never leaves the book'); END;

CREATE TRIGGER rack_pieces_keep_what_they_are BEFORE UPDATE ON rack_pieces
  WHEN OLD.item_id <> NEW.item_id OR OLD.added_on <> NEW.added_on OR OLD.sample < NEW.sample
    OR (OLD.left_on IS NOT NULL AND (OLD.left_on IS NOT NEW.left_on OR OLD.left_why IS NOT NEW.left_why))
BEGIN SELECT RAISE (ABORT, 'a piece stays what it is, and one that left the rack has left it'); END;

CREATE TRIGGER rack_moves_stand BEFORE UPDATE ON rack_moves
BEGIN SELECT RAISE (ABORT, 'what became of a piece is never altered'); END;

CREATE TRIGGER rack_moves_stay BEFORE DELETE ON rack_moves WHEN (SELECT sample FROM rack_pieces WHERE id = OLD.piece_id) = 0
BEGIN SELECT RAISE (ABORT, 'what became of a piece never leaves the book'); END;
