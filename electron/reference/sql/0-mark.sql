-- The input, where it is a table and not a view of files. Every row stands for `marks` marks of one hall that are told
-- alike. A mark lies at `low` or above and below `high`, in grains of its test; a bound that is null is not told. A quarter
-- that is null is not told, either.
CREATE TABLE mark (
  hall INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
  category TEXT NOT NULL, age_band TEXT NOT NULL, quarter TEXT,
  low INTEGER, high INTEGER, marks INTEGER NOT NULL
)
