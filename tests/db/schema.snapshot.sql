CREATE INDEX changes_by_job ON changes (job_id);

CREATE INDEX deeds_by_job ON deeds (job_id);

CREATE INDEX jobs_by_age ON jobs (created_at);

CREATE INDEX jobs_by_change ON jobs (updated_at);

CREATE INDEX jobs_by_customer ON jobs (customer_id);

CREATE INDEX jobs_by_due ON jobs (due, number) WHERE stage <> 'hung' AND put_away = 0;

CREATE INDEX jobs_by_stage ON jobs (stage, put_away, created_at);

CREATE INDEX jobs_of_sample ON jobs (id) WHERE sample = 1;

CREATE INDEX options_by_job ON options (job_id, position);

CREATE INDEX order_cuts_by_length ON order_cuts (length_id);

CREATE INDEX order_jobs_by_job ON order_jobs (job_id);

CREATE INDEX order_lengths_by_item ON order_lengths (item_id);

CREATE INDEX order_lengths_by_order ON order_lengths (order_id);

CREATE INDEX order_lines_by_item ON order_lines (item_id);

CREATE INDEX order_lines_by_order ON order_lines (order_id);

CREATE INDEX order_rack_by_piece ON order_rack (piece_id);

CREATE INDEX order_receipts_by_line ON order_receipts (line_id);

CREATE INDEX orders_by_day ON orders (placed_on);

CREATE INDEX papers_by_validity ON papers (valid_until) WHERE kind = 'quotation';

CREATE INDEX prices_by_item ON prices (item_id);

CREATE INDEX prices_by_rise ON prices (rise_id);

CREATE INDEX rack_moves_by_piece ON rack_moves (piece_id);

CREATE INDEX rack_pieces_by_item ON rack_pieces (item_id);

CREATE INDEX rack_pieces_by_job ON rack_pieces (job_id);

CREATE INDEX rack_pieces_there ON rack_pieces (id) WHERE left_on IS NULL;

CREATE INDEX rises_unfinished ON rises (id) WHERE finished_at IS NULL;

CREATE UNIQUE INDEX supplies_one_usual ON supplies (item_id) WHERE usual = 1;

CREATE INDEX work_done_by_job ON work_done (job_id);

CREATE TABLE acceptances (
  paper_id INTEGER PRIMARY KEY REFERENCES papers (id),
  option_place INTEGER NOT NULL CHECK (option_place >= 0),
  accepted_on TEXT NOT NULL CHECK (accepted_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  note TEXT NOT NULL DEFAULT '',
  added_at TEXT NOT NULL
) STRICT;

CREATE TABLE changes (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  path TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT NOT NULL CHECK (json_valid(after)),
  at TEXT NOT NULL
) STRICT;

CREATE VIRTUAL TABLE customer_words USING fts5 (
  name, town, phone,
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3 4'
);

CREATE TABLE customers (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  address TEXT NOT NULL DEFAULT '',
  town TEXT NOT NULL DEFAULT '',
  phone TEXT NOT NULL DEFAULT '',
  email TEXT NOT NULL DEFAULT '',
  created_at TEXT NOT NULL,
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
) STRICT;

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

CREATE TABLE items (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('timber', 'ironmongery', 'fixing', 'finish', 'work')),
  name TEXT NOT NULL CHECK (length(name) > 0),
  facts TEXT NOT NULL CHECK (json_valid(facts) AND json_type(facts) = 'object'),
  retired INTEGER NOT NULL DEFAULT 0 CHECK (retired IN (0, 1)),
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
, put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1))) STRICT;

CREATE TABLE job_notes (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  place INTEGER NOT NULL CHECK (place > 0),
  words TEXT NOT NULL CHECK (length(words) > 0),
  noted_on TEXT NOT NULL CHECK (noted_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  noted_at TEXT NOT NULL CHECK (noted_at GLOB '[0-2][0-9]:[0-5][0-9]'),
  added_at TEXT NOT NULL,
  mended_at TEXT,
  put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1)),
  UNIQUE (job_id, place)
) STRICT;

CREATE VIRTUAL TABLE job_words USING fts5 (
  number, customer, address, town, phone, title, notes, sizes, gate, stage,
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3 4'
);

CREATE TABLE jobs (
  id INTEGER PRIMARY KEY,
  number TEXT NOT NULL UNIQUE,
  customer_id INTEGER NOT NULL REFERENCES customers (id),
  title TEXT NOT NULL,
  stage TEXT NOT NULL CHECK (stage IN ('enquiry', 'surveyed', 'designed', 'quoted', 'ordered', 'making', 'hung')),
  due TEXT,
  notes TEXT NOT NULL DEFAULT '',
  unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
  entry TEXT NOT NULL CHECK (json_valid(entry)),
  -- The leaf's own sizes, or the least of a surveyed opening's.
  width_mm REAL GENERATED ALWAYS AS (coalesce(
    json_extract(entry, '$.spec.size.width'),
    min(json_extract(entry, '$.spec.size.widths[0]'), json_extract(entry, '$.spec.size.widths[1]'), json_extract(entry, '$.spec.size.widths[2]'))
  )) STORED CHECK (width_mm > 0),
  height_mm REAL GENERATED ALWAYS AS (coalesce(
    json_extract(entry, '$.spec.size.height'),
    min(json_extract(entry, '$.spec.size.heights[0]'), json_extract(entry, '$.spec.size.heights[1]'))
  )) STORED CHECK (height_mm > 0),
  construction TEXT GENERATED ALWAYS AS (json_extract(entry, '$.spec.construction')) STORED NOT NULL,
  version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
, put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1))) STRICT;

CREATE TABLE options (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  position INTEGER NOT NULL CHECK (position > 0),
  name TEXT NOT NULL,
  spec TEXT CHECK (json_valid(spec)),
  entry TEXT NOT NULL CHECK (json_valid(entry)),
  version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0)
) STRICT;

CREATE TABLE order_cuts (
  id INTEGER PRIMARY KEY,
  length_id INTEGER NOT NULL REFERENCES order_lengths (id),
  count INTEGER NOT NULL CHECK (count > 0),
  cut_on TEXT NOT NULL CHECK (cut_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
, taken_back_at TEXT) STRICT;

CREATE TABLE order_jobs (
  order_id INTEGER NOT NULL REFERENCES orders (id),
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  stage_before TEXT CHECK (stage_before IN ('enquiry', 'surveyed', 'designed', 'quoted')),
  PRIMARY KEY (order_id, job_id)
) STRICT, WITHOUT ROWID;

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

CREATE TABLE order_rack (
  length_id INTEGER NOT NULL REFERENCES order_lengths (id),
  piece_id INTEGER NOT NULL REFERENCES rack_pieces (id),
  PRIMARY KEY (length_id, piece_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE order_receipts (
  id INTEGER PRIMARY KEY,
  line_id INTEGER NOT NULL REFERENCES order_lines (id),
  count INTEGER NOT NULL CHECK (count > 0),
  received_on TEXT NOT NULL CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
, taken_back_at TEXT) STRICT;

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

CREATE TABLE "papers" (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  kind TEXT NOT NULL CHECK (kind IN ('job-card', 'quotation')),
  revision INTEGER NOT NULL CHECK (revision > 0),
  format TEXT NOT NULL CHECK (format IN ('a4', 'letter')),
  issued_at TEXT NOT NULL,
  engine TEXT NOT NULL,
  pages INTEGER NOT NULL CHECK (pages > 0),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  header TEXT NOT NULL CHECK (json_valid(header)),
  money TEXT CHECK (json_valid(money)),
  valid_until TEXT GENERATED ALWAYS AS (json_extract(money, '$.validUntil')) STORED,
  spec TEXT NOT NULL CHECK (json_valid(spec)),
  figures TEXT NOT NULL CHECK (json_valid(figures)),
  parts TEXT NOT NULL CHECK (json_valid(parts)),
  bytes BLOB NOT NULL CHECK (length(bytes) > 0),
  UNIQUE (job_id, kind, revision),
  CHECK ((kind = 'quotation') = (money IS NOT NULL))
) STRICT;

CREATE TABLE photographs (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  place INTEGER NOT NULL CHECK (place > 0),
  words TEXT NOT NULL DEFAULT '',
  width INTEGER NOT NULL CHECK (width BETWEEN 1 AND 1600),
  height INTEGER NOT NULL CHECK (height BETWEEN 1 AND 1600),
  added_at TEXT NOT NULL,
  put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1)),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  thumbnail_sha256 TEXT NOT NULL CHECK (length(thumbnail_sha256) = 64),
  thumbnail BLOB NOT NULL CHECK (length(thumbnail) BETWEEN 1 AND 65536),
  bytes BLOB NOT NULL CHECK (length(bytes) BETWEEN 1 AND 1400000),
  UNIQUE (job_id, place)
) STRICT;

CREATE TABLE prices (
  id INTEGER PRIMARY KEY,
  item_id INTEGER NOT NULL REFERENCES items (id),
  supplier_id INTEGER REFERENCES suppliers (id),
  unit TEXT NOT NULL CHECK (unit IN ('metre', 'length', 'each', 'pair', 'box', 'tin', 'hour', 'kilometre', 'visit')),
  size REAL CHECK (size > 0),
  price_pence INTEGER NOT NULL CHECK (price_pence BETWEEN 0 AND 1000000000),
  starts_on TEXT NOT NULL CHECK (starts_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  rise_id INTEGER NOT NULL REFERENCES rises (id),
  CHECK ((unit IN ('length', 'box', 'tin')) = (size IS NOT NULL))
) STRICT;

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
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1)), put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1)),
  CHECK ((left_on IS NULL) = (left_why IS NULL))
) STRICT;

CREATE TABLE rises (
  id INTEGER PRIMARY KEY,
  origin TEXT NOT NULL CHECK (length(origin) > 0),
  added_at TEXT NOT NULL,
  lines INTEGER NOT NULL CHECK (lines > 0),
  finished_at TEXT,
  undone_at TEXT CHECK (undone_at IS NULL OR finished_at IS NOT NULL),
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
) STRICT;

CREATE TABLE sections (
  id INTEGER PRIMARY KEY,
  use TEXT NOT NULL CHECK (use IN ('boards', 'ledges', 'braces')),
  name TEXT NOT NULL CHECK (length(name) > 0),
  species TEXT NOT NULL CHECK (length(species) > 0),
  thickness_mm REAL NOT NULL CHECK (thickness_mm > 0),
  width_mm REAL NOT NULL CHECK (width_mm > 0),
  tongue_mm REAL CHECK (tongue_mm >= 0),
  groove_mm REAL CHECK (groove_mm >= 0),
  source TEXT NOT NULL
) STRICT;

CREATE TABLE settings (
  key TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT, WITHOUT ROWID;

CREATE TABLE suppliers (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (length(name) > 0),
  phone TEXT NOT NULL DEFAULT '',
  notes TEXT NOT NULL DEFAULT '',
  sample INTEGER NOT NULL DEFAULT 0 CHECK (sample IN (0, 1))
, put_away INTEGER NOT NULL DEFAULT 0 CHECK (put_away IN (0, 1))) STRICT;

CREATE TABLE supplies (
  item_id INTEGER NOT NULL REFERENCES items (id),
  supplier_id INTEGER NOT NULL REFERENCES suppliers (id),
  code TEXT NOT NULL DEFAULT '',
  lengths_mm TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(lengths_mm) AND json_type(lengths_mm) = 'array'),
  usual INTEGER NOT NULL DEFAULT 0 CHECK (usual IN (0, 1)),
  PRIMARY KEY (item_id, supplier_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE usual_gates (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) > 0),
  unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
  spec TEXT NOT NULL CHECK (json_valid(spec)),
  kept_at TEXT NOT NULL
) STRICT;

CREATE TABLE work_done (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  what TEXT NOT NULL CHECK (what IN ('hours', 'timber', 'cost')),
  work_group TEXT NOT NULL CHECK (work_group IN ('timber', 'fixings', 'ironmongery', 'finish', 'making', 'hanging', 'extras')),
  operation TEXT NOT NULL,
  quantity REAL NOT NULL,
  note TEXT NOT NULL DEFAULT '',
  done_on TEXT NOT NULL CHECK (done_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  added_at TEXT NOT NULL
) STRICT;

CREATE TRIGGER acceptances_stand BEFORE UPDATE ON acceptances
BEGIN SELECT RAISE (ABORT, 'an acceptance is never altered'); END;

CREATE TRIGGER acceptances_stay BEFORE DELETE ON acceptances
  WHEN (SELECT jobs.sample FROM papers JOIN jobs ON jobs.id = papers.job_id WHERE papers.id = OLD.paper_id) = 0
BEGIN SELECT RAISE (ABORT, 'an acceptance never leaves the book'); END;

CREATE TRIGGER changes_stand BEFORE UPDATE ON changes
BEGIN SELECT RAISE (ABORT, 'a change once kept is never altered'); END;

CREATE TRIGGER changes_stay BEFORE DELETE ON changes WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a change never leaves the book'); END;

CREATE TRIGGER items_keep_their_kind BEFORE UPDATE OF kind ON items WHEN OLD.kind <> NEW.kind
BEGIN SELECT RAISE (ABORT, 'an item stays of its kind: its prices are for that'); END;

CREATE TRIGGER items_keep_their_mark BEFORE UPDATE OF sample ON items WHEN OLD.sample < NEW.sample
BEGIN SELECT RAISE (ABORT, 'an item is a sample from the first or never'); END;

CREATE TRIGGER items_stay BEFORE DELETE ON items WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'an item never leaves the book'); END;

CREATE TRIGGER job_notes_keep_their_place BEFORE UPDATE ON job_notes
  WHEN OLD.job_id <> NEW.job_id OR OLD.place <> NEW.place OR OLD.added_at <> NEW.added_at
BEGIN SELECT RAISE (ABORT, 'a note stays with its job and in its place'); END;

CREATE TRIGGER job_notes_stay BEFORE DELETE ON job_notes WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a note never leaves the book'); END;

CREATE TRIGGER jobs_keep_their_mark BEFORE UPDATE OF sample ON jobs WHEN OLD.sample <> NEW.sample
BEGIN SELECT RAISE (ABORT, 'a job is a sample from the first or never'); END;

CREATE TRIGGER jobs_stay BEFORE DELETE ON jobs WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'a job never leaves the book'); END;

CREATE TRIGGER order_cuts_in_bounds BEFORE INSERT ON order_cuts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_cuts WHERE length_id = NEW.length_id AND taken_back_at IS NULL)
      > (SELECT count FROM order_lengths WHERE id = NEW.length_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = NEW.length_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more is cut than was planned'); END;

CREATE TRIGGER order_cuts_stand BEFORE UPDATE ON order_cuts
  WHEN OLD.length_id <> NEW.length_id OR OLD.count <> NEW.count OR OLD.cut_on <> NEW.cut_on OR OLD.added_at <> NEW.added_at
    OR (NEW.taken_back_at IS NULL AND NEW.count + (SELECT ifnull(sum(count), 0) FROM order_cuts
        WHERE length_id = NEW.length_id AND taken_back_at IS NULL AND id <> NEW.id) > (SELECT count FROM order_lengths WHERE id = NEW.length_id))
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = NEW.length_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'what was cut is taken back or put back, and never altered'); END;

CREATE TRIGGER order_cuts_stay BEFORE DELETE ON order_cuts
  WHEN (SELECT orders.sample FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = OLD.length_id) = 0
BEGIN SELECT RAISE (ABORT, 'what was cut never leaves the book'); END;

CREATE TRIGGER order_jobs_once BEFORE INSERT ON order_jobs
  WHEN EXISTS (SELECT 1 FROM order_jobs AS other JOIN orders ON orders.id = other.order_id
    WHERE other.job_id = NEW.job_id AND orders.cancelled_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'a job stands on one order at a time'); END;

CREATE TRIGGER order_jobs_stand BEFORE UPDATE ON order_jobs
BEGIN SELECT RAISE (ABORT, 'the jobs of an order are never altered'); END;

CREATE TRIGGER order_jobs_stay BEFORE DELETE ON order_jobs WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'the jobs of an order never leave the book'); END;

CREATE TRIGGER order_lengths_stand BEFORE UPDATE ON order_lengths
BEGIN SELECT RAISE (ABORT, 'a length of an order is never altered'); END;

CREATE TRIGGER order_lengths_stay BEFORE DELETE ON order_lengths WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'a length of an order never leaves the book'); END;

CREATE TRIGGER order_lines_stand BEFORE UPDATE ON order_lines
BEGIN SELECT RAISE (ABORT, 'a row of an order is never altered'); END;

CREATE TRIGGER order_lines_stay BEFORE DELETE ON order_lines WHEN (SELECT sample FROM orders WHERE id = OLD.order_id) = 0
BEGIN SELECT RAISE (ABORT, 'a row of an order never leaves the book'); END;

CREATE TRIGGER order_rack_once BEFORE INSERT ON order_rack
  WHEN (SELECT left_on IS NOT NULL OR put_away = 1 FROM rack_pieces WHERE id = NEW.piece_id)
    OR EXISTS (SELECT 1 FROM order_rack AS other JOIN order_lengths ON order_lengths.id = other.length_id
      JOIN orders ON orders.id = order_lengths.order_id WHERE other.piece_id = NEW.piece_id AND orders.cancelled_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'a piece on the rack is kept for one order at a time'); END;

CREATE TRIGGER order_rack_stand BEFORE UPDATE ON order_rack
BEGIN SELECT RAISE (ABORT, 'the pieces of an order are never altered'); END;

CREATE TRIGGER order_rack_stay BEFORE DELETE ON order_rack
  WHEN (SELECT orders.sample FROM orders JOIN order_lengths ON order_lengths.order_id = orders.id WHERE order_lengths.id = OLD.length_id) = 0
BEGIN SELECT RAISE (ABORT, 'the pieces of an order never leave the book'); END;

CREATE TRIGGER order_receipts_in_bounds BEFORE INSERT ON order_receipts
  WHEN NEW.count + (SELECT ifnull(sum(count), 0) FROM order_receipts WHERE line_id = NEW.line_id AND taken_back_at IS NULL)
      > (SELECT count FROM order_lines WHERE id = NEW.line_id)
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = NEW.line_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'no more comes than was ordered'); END;

CREATE TRIGGER order_receipts_stand BEFORE UPDATE ON order_receipts
  WHEN OLD.line_id <> NEW.line_id OR OLD.count <> NEW.count OR OLD.received_on <> NEW.received_on OR OLD.added_at <> NEW.added_at
    OR (NEW.taken_back_at IS NULL AND NEW.count + (SELECT ifnull(sum(count), 0) FROM order_receipts
        WHERE line_id = NEW.line_id AND taken_back_at IS NULL AND id <> NEW.id) > (SELECT count FROM order_lines WHERE id = NEW.line_id))
    OR (SELECT orders.cancelled_at FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = NEW.line_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'what came is taken back or put back, and never altered'); END;

CREATE TRIGGER order_receipts_stay BEFORE DELETE ON order_receipts
  WHEN (SELECT orders.sample FROM orders JOIN order_lines ON order_lines.order_id = orders.id WHERE order_lines.id = OLD.line_id) = 0
BEGIN SELECT RAISE (ABORT, 'what came never leaves the book'); END;

CREATE TRIGGER orders_come_to_something BEFORE UPDATE OF cancelled_at ON orders
  WHEN EXISTS (SELECT 1 FROM order_receipts JOIN order_lines ON order_lines.id = order_receipts.line_id
      WHERE order_lines.order_id = OLD.id AND order_receipts.taken_back_at IS NULL)
    OR EXISTS (SELECT 1 FROM order_cuts JOIN order_lengths ON order_lengths.id = order_cuts.length_id
      WHERE order_lengths.order_id = OLD.id AND order_cuts.taken_back_at IS NULL)
BEGIN SELECT RAISE (ABORT, 'an order that something came of is not cancelled'); END;

CREATE TRIGGER orders_stand BEFORE UPDATE ON orders
  WHEN OLD.number IS NOT NEW.number OR OLD.placed_on IS NOT NEW.placed_on OR OLD.note IS NOT NEW.note OR OLD.cost_pence IS NOT NEW.cost_pence
    OR OLD.request IS NOT NEW.request OR OLD.plan IS NOT NEW.plan OR OLD.pairs IS NOT NEW.pairs OR OLD.added_at IS NOT NEW.added_at
    OR OLD.sample IS NOT NEW.sample OR OLD.cancelled_at IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'an order is cancelled or it stands, and is never altered'); END;

CREATE TRIGGER orders_stay BEFORE DELETE ON orders WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'an order never leaves the book'); END;

CREATE TRIGGER papers_stand BEFORE UPDATE ON papers
BEGIN SELECT RAISE (ABORT, 'an issued paper is never altered'); END;

CREATE TRIGGER papers_stay BEFORE DELETE ON papers WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'an issued paper never leaves the book'); END;

CREATE TRIGGER photographs_stand BEFORE UPDATE ON photographs
  WHEN OLD.job_id <> NEW.job_id OR OLD.place <> NEW.place OR OLD.added_at <> NEW.added_at OR OLD.width <> NEW.width OR OLD.height <> NEW.height
    OR OLD.sha256 <> NEW.sha256 OR OLD.thumbnail_sha256 <> NEW.thumbnail_sha256 OR OLD.thumbnail <> NEW.thumbnail OR OLD.bytes <> NEW.bytes
BEGIN SELECT RAISE (ABORT, 'a photograph is never altered, only what is said of it'); END;

CREATE TRIGGER photographs_stay BEFORE DELETE ON photographs WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a photograph never leaves the book'); END;

CREATE TRIGGER prices_stand BEFORE UPDATE ON prices
BEGIN SELECT RAISE (ABORT, 'a price is never altered'); END;

CREATE TRIGGER prices_stay BEFORE DELETE ON prices
  WHEN (SELECT sample FROM items WHERE id = OLD.item_id) = 0 AND (SELECT finished_at FROM rises WHERE id = OLD.rise_id) IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'a price never leaves the book'); END;

CREATE TRIGGER rack_moves_stand BEFORE UPDATE ON rack_moves
BEGIN SELECT RAISE (ABORT, 'what became of a piece is never altered'); END;

CREATE TRIGGER rack_moves_stay BEFORE DELETE ON rack_moves WHEN (SELECT sample FROM rack_pieces WHERE id = OLD.piece_id) = 0
BEGIN SELECT RAISE (ABORT, 'what became of a piece never leaves the book'); END;

CREATE TRIGGER rack_pieces_keep_what_they_are BEFORE UPDATE ON rack_pieces
  WHEN OLD.item_id <> NEW.item_id OR OLD.added_on <> NEW.added_on OR OLD.sample < NEW.sample
    OR (OLD.left_on IS NOT NULL AND NEW.left_on IS NOT NULL AND (OLD.left_on IS NOT NEW.left_on OR OLD.left_why IS NOT NEW.left_why))
BEGIN SELECT RAISE (ABORT, 'a piece stays what it is, and one that left the rack has left it'); END;

CREATE TRIGGER rack_pieces_stay BEFORE DELETE ON rack_pieces WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'a piece of the rack never leaves the book'); END;

CREATE TRIGGER rises_stand BEFORE UPDATE ON rises
  WHEN OLD.origin IS NOT NEW.origin OR OLD.added_at IS NOT NEW.added_at OR OLD.lines IS NOT NEW.lines OR OLD.sample < NEW.sample
    OR (OLD.finished_at IS NOT NULL AND OLD.finished_at IS NOT NEW.finished_at)
    OR (OLD.undone_at IS NOT NULL AND OLD.undone_at IS NOT NEW.undone_at)
BEGIN SELECT RAISE (ABORT, 'a rise is undone or it stands, and is never altered'); END;

CREATE TRIGGER rises_stay BEFORE DELETE ON rises WHEN OLD.sample = 0 AND OLD.finished_at IS NOT NULL
BEGIN SELECT RAISE (ABORT, 'a rise never leaves the book'); END;

CREATE TRIGGER suppliers_keep_their_mark BEFORE UPDATE OF sample ON suppliers WHEN OLD.sample < NEW.sample
BEGIN SELECT RAISE (ABORT, 'a supplier is a sample from the first or never'); END;

CREATE TRIGGER suppliers_stay BEFORE DELETE ON suppliers WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'a supplier never leaves the book'); END;
