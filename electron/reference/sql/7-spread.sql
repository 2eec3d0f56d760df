-- By how much the halls of every group lie off its middle: the sum of squares of what their marks' places are off it
-- together, apart for every weight that marks have, since all that count whole are whole numbers then.
SELECT standing.grp, COALESCE(capped.weight, 1000000) AS weight,
  SUM(CAST(standing.places - CAST(standing.marks AS BIGINT) * 5000 AS DOUBLE PRECISION)
    * CAST(standing.places - CAST(standing.marks AS BIGINT) * 5000 AS DOUBLE PRECISION)) AS squares
FROM standing
LEFT JOIN capped ON capped.grp = standing.grp AND capped.hall = standing.hall
GROUP BY standing.grp, COALESCE(capped.weight, 1000000)
ORDER BY standing.grp, COALESCE(capped.weight, 1000000)
