-- Which groups there are, and how many marks of which hall are in each.
--
-- A cell is a kind of which there are marks. It belongs to four groups: itself, its category at
-- any age, its age band in any category, and everybody by those rules; `all` is the name of any. From here on an open
-- lower bound is -1 and an open upper one 2147483647, beyond all others, so that bounds compare as numbers.
CREATE TABLE cell AS
SELECT kind.kind AS cell, kind.test, kind.variant, kind.fingerprint, kind.category, kind.age_band,
  found.first_quarter, found.last_quarter
FROM (SELECT kind, MIN(quarter) AS first_quarter, MAX(quarter) AS last_quarter FROM mark GROUP BY kind) AS found
JOIN kind ON kind.kind = found.kind;

-- Whatever follows adds up, so a hall may have several rows of the same bounds.
CREATE TABLE told AS
SELECT kind AS cell, hall, COALESCE(low, -1) AS low, COALESCE(high, 2147483647) AS high, marks
FROM mark;

CREATE TABLE grp AS
SELECT ROW_NUMBER() OVER (ORDER BY test, variant, fingerprint, category, age_band) AS grp,
  test, variant, fingerprint, category, age_band, first_quarter, last_quarter
FROM (
  SELECT test, variant, fingerprint, category, age_band,
    MIN(first_quarter) AS first_quarter, MAX(last_quarter) AS last_quarter
  FROM (
    SELECT test, variant, fingerprint, category, age_band, first_quarter, last_quarter FROM cell
    UNION ALL
    SELECT test, variant, fingerprint, category, 'all', first_quarter, last_quarter FROM cell
    UNION ALL
    SELECT test, variant, fingerprint, 'all', age_band, first_quarter, last_quarter FROM cell
    UNION ALL
    SELECT test, variant, fingerprint, 'all', 'all', first_quarter, last_quarter FROM cell
  ) AS each_four
  GROUP BY test, variant, fingerprint, category, age_band
) AS named;

CREATE TABLE member AS
SELECT cell.cell, grp.grp
FROM cell
JOIN grp
  ON grp.test = cell.test AND grp.variant = cell.variant AND grp.fingerprint = cell.fingerprint
  AND (grp.category = cell.category OR grp.category = 'all')
  AND (grp.age_band = cell.age_band OR grp.age_band = 'all');

CREATE TABLE part AS
SELECT member.grp, in_cell.hall, CAST(SUM(in_cell.marks) AS INTEGER) AS marks
FROM (SELECT cell, hall, SUM(marks) AS marks FROM told GROUP BY cell, hall) AS in_cell
JOIN member ON member.cell = in_cell.cell
GROUP BY member.grp, in_cell.hall
