/**
 * What an organiser planned for a day, one row a day, and what was told of it. It names leagues and no athlete, so that a
 * deletion has nothing to do in it.
 */
export const dayPlan = `
CREATE TABLE day_plan (
  day_id INTEGER PRIMARY KEY REFERENCES day (id),
  -- JSON, by the schema of domain/plan/settings.ts.
  settings TEXT NOT NULL CHECK (json_valid(settings)),
  -- With it a calculation gives the same figures again.
  seed INTEGER NOT NULL CHECK (seed BETWEEN 0 AND 2147483647),
  saved_at TEXT NOT NULL,
  -- JSON: end, station that holds the day up, waits; null until they were worked out.
  told TEXT CHECK (told IS NULL OR json_valid(told)),
  told_at TEXT,
  CHECK ((told IS NULL) = (told_at IS NULL))
) STRICT;
`;
