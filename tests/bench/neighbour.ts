import { seededChance } from "../../electron/domain/chance.ts";
import {
  type Attack,
  playNeighbour,
  sightingsOf,
  unprotectedRows,
} from "../../electron/domain/privacy/neighbour.ts";
import { protect } from "../../electron/domain/privacy/protect.ts";
import { publish, rowContent } from "../../electron/domain/privacy/publish.ts";
import {
  type BundleKind,
  type Candidate,
  type ReleasedRow,
  usualStrictness,
} from "../../electron/domain/privacy/rule.ts";

import { playSubtraction } from "../../electron/domain/privacy/subtraction.ts";

/** What a neighbour matches on a set of days, as shares of the bibs of people who share. */
export interface NeighbourBench {
  readonly days: number;
  /** Days of which something leaves. */
  readonly leaving: number;
  readonly bibs: number;
  /** Marks that leave, as a share of those that could. */
  readonly told: number;
  readonly certainBefore: number;
  readonly certainAfter: number;
  /** Bibs that a guess finds likelier than one in k. */
  readonly exposedAfter: number;
  /** Guesses, one a bib, that named a row which was its own: really guessed, and held against who it was. */
  readonly guessedBefore: number;
  readonly guessedAfter: number;
  readonly milliseconds: number;
}

export function neighbourBench(days: readonly Candidate[][], kind: BundleKind, k: number): NeighbourBench {
  const start = performance.now();
  const linked = kind === "profiles";
  const played = days.map((candidates, at) => {
    const { kept, able } = protect(kind, candidates, { ...usualStrictness, k });
    const sightings = sightingsOf(able);
    const attack = (rows: Parameters<typeof playNeighbour>[0]): Attack =>
      playNeighbour(rows, sightings, { k, linked });
    const rows = publish(kept, seededChance([at + 1, 2, 3, 4]));
    const random = seededChance([at + 1, 5, 6, 7]);
    const exact = unprotectedRows(able, linked);
    return {
      ...{ able: able.length, kept: kept.reduce((sum, { marks }) => sum + marks.length, 0) },
      ...{ before: attack(exact), after: attack(rows) },
      guessedBefore: guesses(
        exact.map((row) => ({ ...row, athlete: Number(row.id) })),
        candidates,
        random,
      ),
      guessedAfter: guesses(kept, candidates, random),
    };
  });
  const milliseconds = performance.now() - start;
  const sum = (of: (day: (typeof played)[number]) => number) => played.reduce((all, day) => all + of(day), 0);
  const bibs = sum(({ before }) => before.bibs);
  return {
    ...{ days: days.length, leaving: played.filter(({ kept }) => kept > 0).length, bibs },
    told: sum(({ kept }) => kept) / sum(({ able }) => able),
    certainBefore: sum(({ before }) => before.certain) / bibs,
    certainAfter: sum(({ after }) => after.certain) / bibs,
    exposedAfter: sum(({ after }) => after.exposed) / bibs,
    guessedBefore: sum((day) => day.guessedBefore) / bibs,
    guessedAfter: sum((day) => day.guessedAfter) / bibs,
    milliseconds: milliseconds / days.length,
  };
}

/**
 * A neighbour of flesh and blood, apart from the program's: for each bib looks up the test of which the fewest rows could be
 * its own, points at one of them, and is told whether it was. Returns how often it was.
 */
function guesses(
  rows: readonly ReleasedRow[],
  candidates: readonly Candidate[],
  random: () => number,
): number {
  const noted = Map.groupBy(
    candidates.filter(({ consent }) => consent === "given"),
    ({ athlete }) => athlete,
  );
  return [...noted].filter(([athlete, marks]) => {
    const tables = Map.groupBy(rows, (row) =>
      row.marks.map(({ test, variant }) => `${test} ${variant}`).join(),
    );
    const fitting = [...tables.values()]
      .map((table) => table.filter((row) => couldBe(row, marks)))
      .filter((some) => some.length > 0)
      .sort((a, b) => a.length - b.length)[0];
    return fitting?.[Math.floor(random() * fitting.length)]?.athlete === athlete;
  }).length;
}

function couldBe({ marks, quasi }: ReleasedRow, noted: readonly Candidate[]): boolean {
  return marks.every(({ test, variant, low, high }) =>
    noted.some(
      (seen) =>
        seen.test === test &&
        seen.variant === variant &&
        seen.mark.state === "complete" &&
        seen.mark.value >= (low ?? -1) &&
        seen.mark.value < (high ?? Number.POSITIVE_INFINITY) &&
        (quasi.ageBand === "not told" || quasi.ageBand === seen.ageBand) &&
        (quasi.category === "not told" || quasi.category === seen.category) &&
        (quasi.leagueSize === "not told" || quasi.leagueSize === seen.leagueSize),
    ),
  );
}

/** What subtracting finds when a day's bundle is made before and after each athlete, and both are in one hand. */
export interface SubtractionBench {
  readonly pairs: number;
  /** Newcomers of whom a row stands alone in the difference of two files, if both could leave. */
  readonly found: number;
}

export function subtractionBench(days: readonly Candidate[][], k: number): SubtractionBench {
  const outcomes = days.flatMap((candidates) => {
    const contents = (some: readonly Candidate[]) =>
      protect("marks", some, { ...usualStrictness, k }).kept.map(rowContent);
    const all = contents(candidates);
    const sharers = new Set(
      candidates.filter(({ consent }) => consent === "given").map(({ athlete }) => athlete),
    );
    return [...sharers].map((newcomer) => {
      const before = contents(candidates.filter(({ athlete }) => athlete !== newcomer));
      return standsAlone(before, all);
    });
  });
  return { pairs: outcomes.length, found: outcomes.filter(Boolean).length };
}

/** Whether some row's content is once more in the second file than in the first while the rest of its test is the same. */
function standsAlone(before: readonly string[], after: readonly string[]): boolean {
  const changes = new Map<string, number>();
  for (const row of after) changes.set(row, (changes.get(row) ?? 0) + 1);
  for (const row of before) changes.set(row, (changes.get(row) ?? 0) - 1);
  const byTest = Map.groupBy(
    [...changes].filter(([, change]) => change !== 0),
    ([row]) => row.slice(0, row.indexOf(",", row.indexOf(",") + 1)),
  );
  return [...byTest.values()].some((some) => some.length === 1 && some[0]?.[1] === 1);
}

/** What a neighbour finds who noted everybody but those whom the board hides. */
export interface HiddenBench {
  /** Marks of hidden people who share. */
  readonly marks: number;
  /** Of them found: with nothing done about this neighbour, and as bundles are. */
  readonly foundWithout: number;
  readonly foundWith: number;
  /** Marks that leave of all, in both cases. */
  readonly toldWithout: number;
  readonly toldWith: number;
  /** Days on which bundles are made otherwise because of this. */
  readonly daysChanged: number;
}

export function hiddenBench(days: readonly Candidate[][], kind: BundleKind, k: number): HiddenBench {
  const linked = kind === "profiles";
  const played = days.map((candidates) => {
    const blind = candidates.map(({ hidden: _hidden, ...rest }) => rest);
    const [without, withRule] = [blind, candidates].map((some) =>
      protect(kind, some, { ...usualStrictness, k }),
    );
    const sightings = sightingsOf(withRule?.able ?? []);
    const found = (kept: readonly ReleasedRow[]) =>
      playSubtraction(publish(kept, seededChance([1, 2, 3, 4])), sightings, linked);
    const [before, after] = [found(without?.kept ?? []), found(withRule?.kept ?? [])];
    const told = (kept: readonly ReleasedRow[]) => kept.reduce((sum, { marks }) => sum + marks.length, 0);
    return {
      ...{ marks: before.marks, foundWithout: before.found, foundWith: after.found },
      ...{ toldWithout: told(without?.kept ?? []), toldWith: told(withRule?.kept ?? []) },
    };
  });
  const sum = (of: (day: (typeof played)[number]) => number) => played.reduce((all, day) => all + of(day), 0);
  return {
    marks: sum(({ marks }) => marks),
    foundWithout: sum((day) => day.foundWithout),
    foundWith: sum((day) => day.foundWith),
    toldWithout: sum((day) => day.toldWithout),
    toldWith: sum((day) => day.toldWith),
    daysChanged: played.filter((day) => day.foundWithout > 0).length,
  };
}
