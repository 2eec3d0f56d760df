import type { Able, ReleasedRow } from "./rule.ts";

/**
 * Hidden athletes who are told and left alone: whoever noted everybody else takes those rows off, and of all that is left
 * in a class (everything that is told but the marks) each says the same interval of some test, so that it is theirs.
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

/** Rows of one class have marks of the same tests, in the same order. */
function classOf({ quasi, marks }: ReleasedRow): string {
  const tests = marks.map(({ test, variant }) => [test, variant]);
  return JSON.stringify([quasi.quarter, quasi.category, quasi.ageBand, quasi.leagueSize, tests]);
}
