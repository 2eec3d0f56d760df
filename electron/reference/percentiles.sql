-- Between which bounds the percentiles of every group of marks lie.
--
-- Reads one table, in which each row stands for `marks` marks of one bundle that are told alike:
--   mark (bundle INTEGER, test TEXT, variant TEXT, fingerprint TEXT, category TEXT, age_band TEXT,
--         low INTEGER, high INTEGER, marks INTEGER)
-- A mark lies at `low` or above and below `high`; a bound that is null is not told. Both are grains of the test.
--
-- The p-th percentile of n values is taken where type 7 of Hyndman and Fan (The American Statistician 50(4), 1996) takes
-- it: at the place h = (n - 1) * p / 100 from 0, so between the value of rank floor(h) + 1 and that of rank ceil(h) + 1.
-- The k-th smallest of values that are only known as intervals is never below the k-th smallest lower bound and always
-- below the k-th smallest upper bound. So the percentile lies from the lower bound of rank floor(h) + 1 to the upper bound
-- of rank ceil(h) + 1, and nothing finer is said. Ranks are compared without division: whole numbers alone decide.
--
-- Groups of fewer than 20 marks are left out. Nothing here but standard SQL:2003 with window functions, except that `=`
-- on the empty text of a variant must be true, which is false in engines that take an empty text for null.
WITH
  percentile (p) AS (VALUES (5), (10), (25), (50), (75), (90), (95)),
  size AS (
    SELECT test, variant, fingerprint, category, age_band,
      SUM(marks) AS n, COUNT(DISTINCT bundle) AS bundles
    FROM mark
    GROUP BY test, variant, fingerprint, category, age_band
    HAVING SUM(marks) >= 20
  ),
  -- Every different lower bound with how many marks have it. One that is not told is below all others.
  low AS (
    SELECT test, variant, fingerprint, category, age_band, low AS bound,
      CASE WHEN low IS NULL THEN 0 ELSE 1 END AS place, SUM(marks) AS marks
    FROM mark
    GROUP BY test, variant, fingerprint, category, age_band, low
  ),
  low_ranked AS (
    SELECT test, variant, fingerprint, category, age_band, bound, marks,
      SUM(marks) OVER (
        PARTITION BY test, variant, fingerprint, category, age_band
        ORDER BY place, bound
        ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
      ) AS last_rank
    FROM low
  ),
  -- Every different upper bound. One that is not told is above all others.
  high AS (
    SELECT test, variant, fingerprint, category, age_band, high AS bound,
      CASE WHEN high IS NULL THEN 1 ELSE 0 END AS place, SUM(marks) AS marks
    FROM mark
    GROUP BY test, variant, fingerprint, category, age_band, high
  ),
  high_ranked AS (
    SELECT test, variant, fingerprint, category, age_band, bound, marks,
      SUM(marks) OVER (
        PARTITION BY test, variant, fingerprint, category, age_band
        ORDER BY place, bound
        ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
      ) AS last_rank
    FROM high
  )
SELECT
  size.test, size.variant, size.fingerprint, size.category, size.age_band,
  percentile.p AS percentile,
  low_ranked.bound AS low, high_ranked.bound AS high,
  CAST(size.n AS INTEGER) AS n, CAST(size.bundles AS INTEGER) AS bundles
FROM size
CROSS JOIN percentile
-- The bound of rank floor(h) + 1: the first of which the last rank is above h.
JOIN low_ranked
  ON low_ranked.test = size.test AND low_ranked.variant = size.variant
  AND low_ranked.fingerprint = size.fingerprint AND low_ranked.category = size.category
  AND low_ranked.age_band = size.age_band
  AND low_ranked.last_rank * 100 > (size.n - 1) * percentile.p
  AND (low_ranked.last_rank - low_ranked.marks) * 100 <= (size.n - 1) * percentile.p
-- The bound of rank ceil(h) + 1: the first of which the last rank is at least h + 1.
JOIN high_ranked
  ON high_ranked.test = size.test AND high_ranked.variant = size.variant
  AND high_ranked.fingerprint = size.fingerprint AND high_ranked.category = size.category
  AND high_ranked.age_band = size.age_band
  AND (high_ranked.last_rank - 1) * 100 >= (size.n - 1) * percentile.p
  AND (high_ranked.last_rank - high_ranked.marks - 1) * 100 < (size.n - 1) * percentile.p
ORDER BY size.test, size.variant, size.fingerprint, size.category, size.age_band, percentile.p
