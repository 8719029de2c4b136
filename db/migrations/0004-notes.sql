-- Notes by day, and photographs. What was mended in either, and what was taken away or put back, stands in `changes` under its place: 'note.3.words'.

-- place: its number among the job's own, 1 first. noted_on and noted_at: when it was, by the workshop's calendar and clock.
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

-- Scaled down before they came here. What is small or asked for often comes before the long columns. put_away: no longer shown, and kept.
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

CREATE TRIGGER job_notes_stay BEFORE DELETE ON job_notes WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a note never leaves the book'); END;

CREATE TRIGGER job_notes_keep_their_place BEFORE UPDATE ON job_notes
  WHEN OLD.job_id <> NEW.job_id OR OLD.place <> NEW.place OR OLD.added_at <> NEW.added_at
BEGIN SELECT RAISE (ABORT, 'a note stays with its job and in its place'); END;

CREATE TRIGGER photographs_stay BEFORE DELETE ON photographs WHEN (SELECT sample FROM jobs WHERE id = OLD.job_id) = 0
BEGIN SELECT RAISE (ABORT, 'a photograph never leaves the book'); END;

CREATE TRIGGER photographs_stand BEFORE UPDATE ON photographs
  WHEN OLD.job_id <> NEW.job_id OR OLD.place <> NEW.place OR OLD.added_at <> NEW.added_at OR OLD.width <> NEW.width OR OLD.height <> NEW.height
    OR OLD.sha256 <> NEW.sha256 OR OLD.thumbnail_sha256 <> NEW.thumbnail_sha256 OR OLD.thumbnail <> NEW.thumbnail OR OLD.bytes <> NEW.bytes
BEGIN SELECT RAISE (ABORT, 'a photograph is never altered, only what is said of it'); END;
