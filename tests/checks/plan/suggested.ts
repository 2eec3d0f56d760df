import { changed } from "../../../electron/domain/plan/change.ts";
import { beginning } from "../../../electron/domain/plan/floor.ts";
import type { Hall, Known, PastDay } from "../../../electron/domain/plan/hall.ts";
import { knownFrom } from "../../../electron/domain/plan/known.ts";
import { finished } from "../../../electron/domain/plan/progress.ts";
import type { Change, Span } from "../../../electron/domain/plan/told.ts";
import { whatIfs } from "../../../electron/domain/plan/what-ifs.ts";
import { assumedHall, mean } from "./calibration.ts";
import { holdDay } from "./true-day.ts";
import { type TrueHall, trueHall } from "./true-hall.ts";
import { momentOf } from "./true-moment.ts";

/** A change that was told to end a hall's days earlier, and what it truly brought there. Seconds. */
export interface Suggested {
  readonly change: Change;
  readonly said: Span;
  /** The mean over days of this hall, each held with the change and without it, with the same chance. */
  readonly truly: number;
}

/** Days of a hall on which a change is truly made. */
const trueDays = 2;
/** A change is told when nine of ten simulated days end at least so much earlier: what the day's own suggestion asks of eight. */
const leastSaved = 180;

/**
 * Returns the first so many suggestions that halls get before a day, one of a hall at most: the change that saves most of
 * those that are clear. The hall has held one day before, of which the stations' times are known.
 */
export function suggestedIn(seed: string, count: number): Suggested[] {
  const suggested: Suggested[] = [];
  for (let number = 1; suggested.length < count && number < 10 * count; number += 1) {
    const truth = trueHall(`${seed} ${number}`);
    const best = suggestionIn(truth, number);
    if (best !== undefined) suggested.push({ ...best, truly: trulySaved(truth, best.change) });
  }
  return suggested;
}

function suggestionIn(truth: TrueHall, number: number): Pick<Suggested, "change" | "said"> | undefined {
  const options = { known: knownOf(truth), seed: [number, 5, 6, 7] as const, days: 60 };
  const changes = changesAt(truth.hall);
  const all = finished(whatIfs(assumedHall(truth.hall), truth.roster, { ...options, changes }));
  return all.flatMap(({ changes: [change, ...more], saved }) =>
    change !== undefined && more.length === 0 && saved.from >= leastSaved ? [{ change, said: saved }] : [],
  )[0];
}

/** One more place or judge: changes that no result depends on. */
function changesAt({ stations, judges }: Hall): Change[] {
  const places = stations.map(({ test }) => ({ kind: "place", test }) as const);
  return judges === null ? places : [...places, { kind: "judge" }];
}

/** What a store would know after an earlier day of the same hall, with other people and other chance. */
function knownOf(truth: TrueHall): Known[] {
  const earlier = { ...truth, seed: `${truth.seed} earlier` };
  const day = holdDay(earlier);
  const past: PastDay = {
    hall: { ...assumedHall(truth.hall), breaks: truth.hall.breaks.map((pause) => shifted(pause, day.end)) },
    done: momentOf(earlier, day, day.end).done,
    arrived: new Map(day.people.flatMap(({ id, at }) => (at === null ? [] : [[id, at - day.end]]))),
  };
  return knownFrom([past]);
}

function shifted({ from, until }: { from: number; until: number }, by: number) {
  return { from: from - by, until: until - by };
}

/** Holds days of a hall twice, with the change and without it: everybody's turns are as long in both. */
function trulySaved(truth: TrueHall, change: Change): number {
  const after = changed(beginning(truth.hall, truth.roster), change)?.hall ?? truth.hall;
  return mean(
    Array.from({ length: trueDays }, (_none, index) => {
      const day = { ...truth, seed: `${truth.seed} day ${index}` };
      return holdDay(day).end - holdDay(day, after).end;
    }),
  );
}
