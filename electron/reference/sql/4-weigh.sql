-- What each mark counts of the halls that have more of a group than the cap lets count, in millionths, rounded down. The
-- remainder is taken away first, so that whole numbers are divided without one.
CREATE TABLE capped AS
SELECT part.grp, part.hall, CAST((cap.twice * 500000 - (cap.twice * 500000) % part.marks) / part.marks AS INTEGER) AS weight
FROM part
JOIN cap ON cap.grp = part.grp
WHERE 2 * part.marks > cap.twice;

-- What all marks of a group that are told alike count together, in millionths: all of them whole, less what a hall that
-- is cut does not count. Added up by cell before by group, since few rows are left then.
CREATE TABLE weighed AS
SELECT grp, low, high, CAST(SUM(weight) AS BIGINT) AS weight
FROM (
  SELECT member.grp, alike.low, alike.high, alike.marks * 1000000 AS weight
  FROM (SELECT cell, low, high, CAST(SUM(marks) AS BIGINT) AS marks FROM told GROUP BY cell, low, high) AS alike
  JOIN member ON member.cell = alike.cell
  UNION ALL
  SELECT member.grp, told.low, told.high, CAST(told.marks AS BIGINT) * (capped.weight - 1000000)
  FROM capped
  JOIN member ON member.grp = capped.grp
  JOIN told ON told.cell = member.cell AND told.hall = capped.hall
) AS whole_and_cut
GROUP BY grp, low, high
HAVING SUM(weight) > 0
