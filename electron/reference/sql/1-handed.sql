-- Of what people handed in, one row for each result, those that count: in every category and age band by the same rules
-- only whole fives, the longest known first, so that nobody's own result is told by what one table says and the one
-- before did not. `turn` is the order in which files came.
CREATE TABLE handed_counting AS
SELECT test, variant, fingerprint, category, age_band, low, high
FROM (
  SELECT test, variant, fingerprint, category, age_band, low, high,
    ROW_NUMBER() OVER (PARTITION BY test, variant, fingerprint, category, age_band ORDER BY turn) AS place,
    COUNT(*) OVER (PARTITION BY test, variant, fingerprint, category, age_band) AS n
  FROM handed
) AS in_turn
WHERE place <= n - n % 5
