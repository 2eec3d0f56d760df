import type { Able, ReleasedRow } from "./rule.ts";

/**
 * Returns the hidden athletes whose released marks would be left alone. A neighbour who noted everybody else removes
 * those rows; if all remaining rows of a class (equal in everything but the marks) then report the same interval of
 * some test, that interval is theirs.
 */
export function leftAlone(kept: readonly ReleasedRow[], able: readonly Able[]): ReadonlySet<number> {
  const hidden = new Set(able.filter((mark) => mark.hidden === true).map(({ athlete }) => athlete));
  const classes = Map.groupBy(
    kept.filter(({ athlete }) => hidden.has(athlete)),
    classOf,
  );
  const alone = [...classes.values()].filter((members) =>
    (members[0]?.marks ?? []).some((_mark, at) => intervalsAt(members, at).size === 1),
  );
  return new Set(alone.flat().map(({ athlete }) => athlete));
}

function intervalsAt(rows: readonly ReleasedRow[], at: number): Set<string> {
  return new Set(rows.map(({ marks }) => JSON.stringify([marks[at]?.low, marks[at]?.high])));
}

/** Returns a row's class. Rows of one class have marks of the same tests, in the same order. */
function classOf({ quasi, marks }: ReleasedRow): string {
  const tests = marks.map(({ test, variant }) => [test, variant]);
  return JSON.stringify([quasi.quarter, quasi.category, quasi.ageBand, quasi.leagueSize, tests]);
}
