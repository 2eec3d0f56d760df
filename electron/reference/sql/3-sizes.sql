-- Every group with its marks, its halls, the hall in the middle of them, and the two that have most marks in it.
-- `counted` are the marks of which no hall has more than three times what the middle one has (cap.ts).
WITH
  -- Halls in their order by marks: `reached` are those with as many or fewer.
  ranked AS (
    SELECT grp, marks, alike,
      SUM(alike) OVER (PARTITION BY grp) AS halls,
      SUM(alike) OVER (
        PARTITION BY grp ORDER BY marks ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
      ) AS reached
    FROM (SELECT grp, marks, COUNT(*) AS alike FROM part GROUP BY grp, marks) AS by_marks
  ),
  -- Of an even number, the lower one of the two in the middle.
  middle AS (SELECT grp, marks FROM ranked WHERE 2 * reached >= halls AND 2 * (reached - alike) < halls),
  size AS (
    SELECT ranked.grp, SUM(ranked.marks * ranked.alike) AS total, SUM(ranked.alike) AS halls,
      SUM(ranked.alike * CASE WHEN ranked.marks > 3 * middle.marks THEN 3 * middle.marks ELSE ranked.marks END) AS counted
    FROM ranked
    JOIN middle ON middle.grp = ranked.grp
    GROUP BY ranked.grp
  )
SELECT grp.grp, grp.test, grp.variant, grp.fingerprint, grp.category, grp.age_band,
  grp.first_quarter, grp.last_quarter, size.total, size.counted, size.halls, middle.marks AS middle,
  one.marks AS largest, COALESCE(two.marks, 0) AS second
FROM grp
JOIN size ON size.grp = grp.grp
JOIN middle ON middle.grp = grp.grp
JOIN ranked AS one ON one.grp = grp.grp AND one.reached = one.halls
LEFT JOIN ranked AS two
  ON two.grp = grp.grp AND two.reached >= two.halls - 1 AND two.reached - two.alike < two.halls - 1
ORDER BY grp.grp
