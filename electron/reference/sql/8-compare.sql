-- Every hall in every test against all others: rank-sums within the groups of one category and age band, put together as
-- van Elteren does (see differing-halls.ts). A hall that is cut counts as so many marks as count of it.
-- A test is told by the number of one of its groups, since there are very many rows.
SELECT hall, number AS test,
  SUM(share * (places / 10000.0 - marks * mean) * weight) AS above,
  SUM(share * share * marks * weight * (total - marks * weight) / (total - 1) * variance) AS variance,
  SUM(share * marks * weight) AS size
FROM (
  SELECT standing.hall, one_test.number, standing.marks, standing.places, moments.mean, moments.variance, moments.total,
    moments.total / (moments.total + 1) AS share,
    COALESCE(capped.weight, 1000000) / 1000000.0 AS weight
  FROM standing
  JOIN grp ON grp.grp = standing.grp AND grp.category <> 'all' AND grp.age_band <> 'all'
  JOIN (SELECT test, MIN(grp) AS number FROM grp GROUP BY test) AS one_test ON one_test.test = grp.test
  JOIN moments ON moments.grp = standing.grp AND moments.total > 1
  LEFT JOIN capped ON capped.grp = standing.grp AND capped.hall = standing.hall
) AS compared
GROUP BY hall, number
ORDER BY hall, number
