CREATE INDEX changes_by_job ON changes (job_id);

CREATE INDEX jobs_by_customer ON jobs (customer_id);

CREATE INDEX jobs_by_stage ON jobs (stage);

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

CREATE VIRTUAL TABLE job_words USING fts5 (
  number, customer, town, phone, title, notes, sizes,
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
) STRICT;

CREATE TABLE papers (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  kind TEXT NOT NULL CHECK (kind IN ('job-card')),
  revision INTEGER NOT NULL CHECK (revision > 0),
  format TEXT NOT NULL CHECK (format IN ('a4', 'letter')),
  issued_at TEXT NOT NULL,
  engine TEXT NOT NULL,
  spec TEXT NOT NULL CHECK (json_valid(spec)),
  figures TEXT NOT NULL CHECK (json_valid(figures)),
  parts TEXT NOT NULL CHECK (json_valid(parts)),
  header TEXT NOT NULL CHECK (json_valid(header)),
  pages INTEGER NOT NULL CHECK (pages > 0),
  bytes BLOB NOT NULL CHECK (length(bytes) > 0),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  UNIQUE (job_id, kind, revision)
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

CREATE TRIGGER changes_stand BEFORE UPDATE ON changes
BEGIN SELECT RAISE (ABORT, 'a change once kept is never altered'); END;

CREATE TRIGGER changes_stay BEFORE DELETE ON changes WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a change never leaves the book'); END;

CREATE TRIGGER jobs_keep_their_mark BEFORE UPDATE OF sample ON jobs WHEN OLD.sample <> NEW.sample
BEGIN SELECT RAISE (ABORT, 'a job is a sample from the first or never'); END;

CREATE TRIGGER jobs_stay BEFORE DELETE ON jobs WHEN OLD.sample = 0
BEGIN SELECT RAISE (ABORT, 'a job never leaves the book'); END;

CREATE TRIGGER papers_stand BEFORE UPDATE ON papers
BEGIN SELECT RAISE (ABORT, 'an issued paper is never altered'); END;

CREATE TRIGGER papers_stay BEFORE DELETE ON papers WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'an issued paper never leaves the book'); END;
