import type { AnyLane } from "../../domain/heats/fold.ts";
import { clockOf } from "../../domain/heats/fold.ts";
import { Refusal } from "../../domain/refusal.ts";
import { judge } from "../../domain/tests/judge.ts";
import type { LaneResult } from "../../domain/tests/live.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { recordAttempt, voidAttempt } from "../../store/tables/record.ts";
import type { LoadedHeat, LoadedLane, MadeAttempt } from "./load.ts";

/** Who changed what the lanes came to, when, and why an attempt that was entered no longer stands. */
export interface Cause {
  readonly by: string;
  readonly at: string;
  readonly reason: string;
}

/**
 * Brings the attempts in line with what the lanes came to: enters what is new, voids what is no more. What did not
 * change is left alone, so that a correction from outside the heat stands. Part of the caller's transaction.
 * @throws Refusal when what was typed at a lane's own pace can't be taken; a running clock is never refused.
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

/** The attempts that a lane entered for one result; more than one where it was taken back and came again. */
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
  // The count tells a new one from those taken back.
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
    // Somebody keyed this athlete's test meanwhile. The tap is kept all the same, and the view says what to do.
    if (typed || !(error instanceof Refusal)) throw error;
  }
}
