-- The input, where it is tables and not views of files. A kind has one set of rules, one category and one age band. Every
-- row of `mark` stands for `marks` marks of one hall and kind that are told alike. A mark lies at `low` or above and below
-- `high`, in grains of its test; a bound that is null is not told. A quarter that is null is not told, either.
CREATE TABLE kind (
  kind INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
  category TEXT NOT NULL, age_band TEXT NOT NULL
);
CREATE TABLE mark (
  hall INTEGER NOT NULL, kind INTEGER NOT NULL, quarter TEXT, low INTEGER, high INTEGER, marks INTEGER NOT NULL
)
