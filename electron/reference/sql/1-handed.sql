-- Of what people handed in, one row for each result, those that count: in every category and age band by the same rules
-- only whole fives, the longest known first, so that nobody's own result is told by what one table says and the one
-- before did not. `turn` is the order in which files came.
CREATE TABLE handed_counting AS
SELECT kind, low, high
FROM (
  SELECT kind, low, high,
    ROW_NUMBER() OVER (PARTITION BY kind ORDER BY turn) AS place,
    COUNT(*) OVER (PARTITION BY kind) AS n
  FROM handed
) AS in_turn
WHERE place <= n - n % 5
