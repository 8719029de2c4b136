-- The gates that the workshop makes again and again, each under a name of its own. spec is the whole gate as it was kept, sizes and all, so that it can be drawn.
CREATE TABLE usual_gates (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) > 0),
  unit TEXT NOT NULL CHECK (unit IN ('mm', 'in')),
  spec TEXT NOT NULL CHECK (json_valid(spec)),
  kept_at TEXT NOT NULL
) STRICT;
