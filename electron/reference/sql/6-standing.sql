-- What the places of each hall's marks in each group add up to.
CREATE TABLE standing AS
SELECT member.grp, told.hall, CAST(SUM(told.marks) AS INTEGER) AS marks,
  CAST(SUM(CAST(told.marks AS BIGINT) * place.place) AS BIGINT) AS places
FROM told
JOIN member ON member.cell = told.cell
JOIN place ON place.grp = member.grp AND place.low = told.low AND place.high = told.high
GROUP BY member.grp, told.hall
