-- Every group with its marks, its halls, and the two halls that have most marks in it.
WITH
  ranked AS (
    SELECT grp, hall, marks, ROW_NUMBER() OVER (PARTITION BY grp ORDER BY marks DESC, hall) AS turn
    FROM part
  ),
  size AS (SELECT grp, SUM(marks) AS total, COUNT(*) AS halls FROM part GROUP BY grp)
SELECT grp.grp, grp.test, grp.variant, grp.fingerprint, grp.category, grp.age_band,
  grp.first_quarter, grp.last_quarter, size.total, size.halls,
  one.hall AS largest_hall, one.marks AS largest, two.hall AS second_hall, two.marks AS second
FROM grp
JOIN size ON size.grp = grp.grp
JOIN ranked AS one ON one.grp = grp.grp AND one.turn = 1
LEFT JOIN ranked AS two ON two.grp = grp.grp AND two.turn = 2
ORDER BY grp.grp
