import type { TestCode } from "../../electron/domain/tests/registry.ts";
import type { WritableDb } from "../../electron/store/connection/database.ts";
import { addAthlete, type Category, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { cm } from "../lengths.ts";
import type { TestDesk } from "./desk.ts";

/** Somebody of the invented hall; every value of a kind that must not leave is one that nothing else spells. */
export interface Skater {
  readonly name: string;
  readonly number: string;
  readonly bib: number;
  readonly birthYear: number | null;
  readonly category: Category | null;
  readonly share: boolean;
  readonly guardianConsent: boolean;
}

export const leagueNames = ["Quibblewick Hexagons", "Vondermoor Zephyrs"];
export const dayTitle = "Wollzig Hall, autumn meet";
export const notes = ["slipped on tape seam near lane zwei", "knee sleeve borrowed from Yxolde"];
export const initials = ["QJX", "ZWV"];
export const date = "2026-11-14";

/** What names the day and its helpers. */
export interface Named {
  readonly title: string;
  readonly date: string;
  readonly leagues: readonly string[];
  readonly notes: readonly string[];
  readonly initials: readonly string[];
}
const named: Named = { title: dayTitle, date, leagues: leagueNames, notes, initials };

type Group = Partial<Omit<Skater, "name" | "number" | "bib">> & { count: number };

/** Twelve women and six men who leave, and one group for each reason to stay. */
const groups: readonly Group[] = [
  { count: 12, birthYear: 1998, category: "women" },
  { count: 6, birthYear: 1993, category: "men" },
  { count: 4, birthYear: 1984, category: "open" },
  { count: 3, birthYear: 1999, category: "women", share: false },
  { count: 2, birthYear: 2009, category: "women" },
  { count: 1, birthYear: 2010, category: "women", guardianConsent: true },
  { count: 5, birthYear: null, category: null },
];

const syllables = ["zoq", "wuf", "jyx", "vep", "kiz", "gwo"];

function nameOf(index: number): string {
  const part = (at: number) => syllables[Math.floor(index / 6 ** at) % 6] ?? "";
  return `${part(0)}${part(1)}ulka Brand${part(1)}${part(0)}`.replace(/\b\w/g, (letter) =>
    letter.toUpperCase(),
  );
}

export const skaters: readonly Skater[] = groups
  .flatMap(({ count, ...group }) => Array.from({ length: count }, () => group))
  .map((group, index) => ({
    name: nameOf(index),
    number: String(7301 + 7 * index),
    bib: 8804 + 3 * index,
    birthYear: 1990,
    category: null,
    share: true,
    guardianConsent: false,
    ...group,
  }));

/** One attempt that makes a complete mark, different for everybody. */
function seenAt(test: TestCode, index: number): { variant: string; seen: unknown }[] {
  switch (test) {
    case "push-up":
      return [
        { variant: index % 4 === 0 ? "knee" : "full", seen: { how: "tally", reps: 12 + index, offAtEnd: 2 } },
      ];
    case "agility":
      return (["cw", "ccw"] as const).map((direction, trial) => ({
        variant: "",
        seen: { direction, laps: 6, extra: index % 4, touches: trial },
      }));
    case "vertical":
      return [{ variant: "", seen: { standingReach: cm(210), touchReach: cm(240 + index / 2) } }];
    case "core":
      return [{ variant: "", seen: { held: 61_500 + 4000 * index } }];
    case "endurance":
      return [{ variant: "", seen: { finished: true, time: 301_230 + 1710 * index } }];
    // This hall does no other test.
    default:
      return [];
  }
}

let attemptCount = 0;

export function enter(
  db: WritableDb,
  dayId: number,
  athleteId: number,
  test: TestCode,
  index: number,
  by = named,
): void {
  for (const { variant, seen } of seenAt(test, index)) {
    attemptCount += 1;
    recordAttempt(db, dayId, {
      id: `attempt-zzyq-${attemptCount}`,
      athleteId,
      test,
      variant,
      seen,
      enteredBy: by.initials[index % 2] ?? "",
      note: by.notes[index % 2] ?? "",
      source: "station",
      at: `${by.date}T10:${String(index).padStart(2, "0")}:41.317Z`,
      replaces: null,
    });
  }
}

const usualTests: readonly TestCode[] = ["push-up", "agility", "vertical", "core"];

/** Holds the day with these skaters in this order: opened through the door, everybody with a bib and a leap and more. */
export async function holdDay(
  hall: TestDesk,
  who: readonly Skater[] = skaters,
  tests: readonly TestCode[] = usualTests,
  by = named,
): Promise<number> {
  const { dayId } = await hall.as("organiser").day.create({ date: by.date, title: by.title, sure: true });
  await hall.as("organiser").day.open({ sure: true });
  addToDay(hall, dayId, who, tests, by);
  return dayId;
}

/** More skaters, with their marks; a skater of another list takes the marks of their place in it. */
export function addToDay(
  { desk }: TestDesk,
  dayId: number,
  who: readonly Skater[],
  tests = usualTests,
  by = named,
): void {
  desk.store.write(["people", "entrants", "attempts"], (db) => {
    for (const [place, skater] of who.entries()) {
      const index = skaters.includes(skater) ? skaters.indexOf(skater) : place;
      const leagueId = leagueNamed(db, by.leagues[index % 2] ?? "");
      const { bib, ...rest } = skater;
      const athleteId = addAthlete(db, { ...rest, leagueId, board: "bib", asked: true });
      setEntrant(db, dayId, { athleteId, state: "testing", bib, since: `${by.date}T09:00:00.000Z` });
      for (const test of tests) enter(db, dayId, athleteId, test, index, by);
    }
  });
}
