-- Between which bounds the percentiles of every group of at least 20 marks that count lie.
--
-- The p-th percentile of n values is taken where type 7 of Hyndman and Fan (The American Statistician 50(4), 1996) takes
-- it: at the place h = (n - 1) * p / 100 from 0, so between the value of rank floor(h) + 1 and that of rank ceil(h) + 1.
-- With weights, n is their sum, 1 is the weight of a mark that counts whole (1000000), and a mark covers as much of the
-- line from 0 to n as it counts, in the order of the values. The two values are those that cover the place h and, just
-- before it, the place h + 1; with weights of 1 these are the two ranks. The value at a place of intervals is never below
-- the lower bound that lies at that place in the order of lower bounds, and always below the upper bound that lies there
-- in the order of upper bounds. So the percentile lies from the lower bound at h to the upper bound at h + 1, and nothing
-- finer is said. Places are compared without division: whole numbers alone decide.
WITH
  size AS (SELECT grp, SUM(weight) AS n FROM weighed GROUP BY grp HAVING SUM(weight) >= 20000000),
  low AS (SELECT grp, low AS bound, SUM(weight) AS weight FROM weighed GROUP BY grp, low),
  low_reached AS (
    SELECT grp, bound, weight,
      SUM(weight) OVER (
        PARTITION BY grp ORDER BY bound ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
      ) AS reached
    FROM low
  ),
  high AS (SELECT grp, high AS bound, SUM(weight) AS weight FROM weighed GROUP BY grp, high),
  high_reached AS (
    SELECT grp, bound, weight,
      SUM(weight) OVER (
        PARTITION BY grp ORDER BY bound ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
      ) AS reached
    FROM high
  )
SELECT size.grp, percentile.p AS percentile,
  NULLIF(low_reached.bound, -1) AS low, NULLIF(high_reached.bound, 2147483647) AS high
FROM size
CROSS JOIN percentile
-- Covers h: reached is above it, and what was reached before is not.
JOIN low_reached
  ON low_reached.grp = size.grp
  AND low_reached.reached * 100 > (size.n - 1000000) * percentile.p
  AND (low_reached.reached - low_reached.weight) * 100 <= (size.n - 1000000) * percentile.p
-- Covers the place just before h + 1: reached is at least that, and what was reached before is below it.
JOIN high_reached
  ON high_reached.grp = size.grp
  AND (high_reached.reached - 1000000) * 100 >= (size.n - 1000000) * percentile.p
  AND (high_reached.reached - high_reached.weight - 1000000) * 100 < (size.n - 1000000) * percentile.p
ORDER BY size.grp, percentile.p
