-- A book of many years stays quick: what lists ask for is found by an index, and jobs are found by more words.

-- The list, newest first, of all stages or one; those promised up to a day; the sample's few among the workshop's own.
DROP INDEX jobs_by_stage;
CREATE INDEX jobs_by_stage ON jobs (stage, put_away, created_at);
CREATE INDEX jobs_by_age ON jobs (created_at);
CREATE INDEX jobs_by_change ON jobs (updated_at);
CREATE INDEX jobs_by_due ON jobs (due, number) WHERE stage <> 'hung' AND put_away = 0;
CREATE INDEX jobs_of_sample ON jobs (id) WHERE sample = 1;
CREATE INDEX orders_by_day ON orders (placed_on);
CREATE INDEX papers_by_validity ON papers (valid_until) WHERE kind = 'quotation';

-- The words again, with the customer's address, what the gate is like, and the stage. The program fills them when it opens the book.
DROP TABLE job_words;
CREATE VIRTUAL TABLE job_words USING fts5 (
  number, customer, address, town, phone, title, notes, sizes, gate, stage,
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3 4'
);
