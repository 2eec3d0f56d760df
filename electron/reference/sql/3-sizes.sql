-- Every group with its marks, its halls, the hall in the middle of them, and the two that have most marks in it.
-- `counted` are the marks of which no hall has more than three times what the middle one has (cap.ts).
WITH
  ranked AS (
    SELECT grp, hall, marks, COUNT(*) OVER (PARTITION BY grp) AS halls,
      ROW_NUMBER() OVER (PARTITION BY grp ORDER BY marks, hall) AS turn
    FROM part
  ),
  -- Of an even number, the lower one of the two in the middle.
  middle AS (SELECT grp, marks FROM ranked WHERE 2 * turn >= halls AND 2 * turn < halls + 2),
  size AS (
    SELECT part.grp, SUM(part.marks) AS total, COUNT(*) AS halls,
      SUM(CASE WHEN part.marks > 3 * middle.marks THEN 3 * middle.marks ELSE part.marks END) AS counted
    FROM part
    JOIN middle ON middle.grp = part.grp
    GROUP BY part.grp
  )
SELECT grp.grp, grp.test, grp.variant, grp.fingerprint, grp.category, grp.age_band,
  grp.first_quarter, grp.last_quarter, size.total, size.counted, size.halls, middle.marks AS middle,
  one.marks AS largest, COALESCE(two.marks, 0) AS second
FROM grp
JOIN size ON size.grp = grp.grp
JOIN middle ON middle.grp = grp.grp
JOIN ranked AS one ON one.grp = grp.grp AND one.turn = one.halls
LEFT JOIN ranked AS two ON two.grp = grp.grp AND two.turn = two.halls - 1
ORDER BY grp.grp
