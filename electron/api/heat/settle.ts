import { type AnyLane, clockOf } from "../../domain/heats/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { judge } from "../../domain/tests/judge.ts";
import type { LaneResult } from "../../domain/tests/live.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { recordAttempt, voidAttempt } from "../../store/tables/record.ts";
import type { LoadedHeat, LoadedLane, MadeAttempt } from "../lanes/load.ts";

/** The author, time and reason of a change in the lanes' results, for attempts that it voids. */
export interface Cause {
  readonly by: string;
  readonly at: string;
  readonly reason: string;
}

/**
 * Brings the attempts in line with the lanes' results: enters new ones, voids dropped ones. Unchanged ones are left
 * alone, so that a correction from outside the heat survives. Part of the caller's transaction.
 * @throws Refusal when input typed at a lane's own pace can't be accepted; a running clock is never refused.
 */
export function settle(
  db: WritableDb,
  loaded: LoadedHeat,
  before: readonly AnyLane[],
  after: readonly AnyLane[],
  cause: Cause,
): void {
  for (const lane of loaded.lanes) {
    const was = resultsOf(before, lane.lane);
    const is = resultsOf(after, lane.lane);
    for (const [key, seen] of was) if (is.get(key)?.text !== seen.text) takeBack(db, lane, key, cause);
    for (const [key, seen] of is) {
      if (was.get(key)?.text !== seen.text) enter(db, loaded, lane, { key, seen: seen.seen }, cause);
    }
  }
}

function resultsOf(lanes: readonly AnyLane[], number: number): Map<string, { seen: unknown; text: string }> {
  const results: readonly LaneResult[] = lanes.find(({ lane }) => lane === number)?.results ?? [];
  return new Map(results.map(({ key, seen }) => [key, { seen, text: JSON.stringify(seen) }]));
}

/** Returns a lane's attempts for one result; more than one if it was undone and came again. */
function enteredFor(lane: LoadedLane, key: string): MadeAttempt[] {
  return lane.made.filter(({ result }) => result === key);
}

function takeBack(db: WritableDb, lane: LoadedLane, key: string, cause: Cause): void {
  const standing = enteredFor(lane, key).filter(({ void: ended }) => ended === null);
  for (const { id } of standing) voidAttempt(db, id, cause);
}

function enter(db: WritableDb, loaded: LoadedHeat, lane: LoadedLane, result: LaneResult, cause: Cause): void {
  const { heat, parameters } = loaded;
  const typed = clockOf(heat.test) === "own";
  const { refusal } = judge(heat.test, parameters, [result.seen]);
  if (refusal !== null) {
    if (typed) throw new Refusal("bad-input", refusal);
    return;
  }
  // The count distinguishes a new one from those undone.
  const count = enteredFor(lane, result.key).length;
  try {
    recordAttempt(db, heat.dayId, {
      id: `heat.${heat.id}.${lane.lane}.${result.key}.${count}`,
      fromHeat: { heatId: heat.id, result: result.key },
      athleteId: lane.athleteId,
      test: heat.test,
      variant: lane.variant,
      seen: result.seen,
      enteredBy: cause.by,
      note: "",
      source: "heat",
      at: cause.at,
      replaces: null,
    });
  } catch (error) {
    // Somebody else entered this athlete's test meanwhile. The tap is stored anyway, and the view says what to do.
    if (typed || !(error instanceof Refusal)) throw error;
  }
}
