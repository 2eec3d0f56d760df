import type { Elapsed, LaneState, What } from "../tests/live.ts";
import {
  type AnyTest,
  type AttemptOf,
  definitionOf,
  type LaneOf,
  type ParametersOf,
  type TestCode,
} from "../tests/registry.ts";
import { type Sentence, sentence } from "../words.ts";
import {
  commonWhat,
  type FoldedLane,
  type HeatEvent,
  inTime,
  isNoTap,
  type LaneInput,
  standingTaps,
  undoMs,
  undoneBy,
} from "./heat.ts";

export type AnyLane = FoldedLane<LaneOf<TestCode>>;

/**
 * Returns the clock of a test's heats. common: all lanes start at once, and are fixed from then on. own: each lane has
 * its own pace, the heat runs from its gathering on, and a lane is fixed by its first tap.
 */
export function clockOf(test: TestCode): "common" | "own" {
  return definitionOf(test).live.clock;
}

/** Returns the time from the start tap to time 0, in ms. */
export function countInMs<Test extends TestCode>(test: Test, parameters: ParametersOf<Test>): number {
  return definitionOf(test).live.countInMs(parameters);
}

/** Parses a tap's kind and detail by its test's schema; null for an unknown kind. */
export function readWhat(test: TestCode, what: What): What | null {
  const common = commonWhat.safeParse(what);
  if (common.success) return common.data;
  const own = definitionOf(test).live.what.safeParse(what);
  return own.success ? own.data : null;
}

/**
 * Computes the state of every lane from its taps, ordered by time and without undone ones, in whatever order they
 * arrived. Pure: after a crash the same events give the same lanes.
 * @param events with kind and detail as `readWhat` read them
 * @param elapsed ms since time 0; null before the start
 */
export function foldHeat<Test extends TestCode>(
  test: Test,
  parameters: ParametersOf<Test>,
  lanes: readonly LaneInput<AttemptOf<Test>>[],
  events: readonly HeatEvent[],
  elapsed: Elapsed,
): FoldedLane<LaneOf<Test>>[] {
  const taps = inTime(standingTaps(events));
  const live = definitionOf(test).live;
  return lanes.map(({ lane, prior }) => {
    const own = taps.filter((tap) => tap.lane === null || tap.lane === lane);
    return { lane, ...foldLane(live, parameters, prior, own, elapsed) } as unknown as FoldedLane<
      LaneOf<Test>
    >;
  });
}

function foldLane(
  live: AnyTest["live"],
  parameters: unknown,
  prior: readonly unknown[],
  taps: readonly HeatEvent[],
  elapsed: Elapsed,
): LaneState & { readonly idle: readonly string[] } {
  const idle: string[] = [];
  let kept = live.empty(parameters, prior);
  let aside = false;
  for (const tap of taps) {
    const before = kept;
    if (aside) idle.push(tap.id);
    else if (tap.kind === "aside") aside = live.show(kept, parameters, tap.atMs).phase !== "done";
    else kept = live.step(kept, tap, parameters);
    if (!aside && kept === before) idle.push(tap.id);
  }
  const shown = live.show(kept, parameters, elapsed);
  return { ...shown, phase: aside ? "aside" : shown.phase, idle };
}

/** Returns why a tap can't be undone now; null when it can. @param elapsed ms since time 0 */
export function undoTrouble(events: readonly HeatEvent[], eventId: string, elapsed: number): Sentence | null {
  const event = events.find(({ id }) => id === eventId);
  if (event === undefined || isNoTap(event)) return sentence("heat.undo.unknown");
  if (events.some((each) => undoneBy(each) === eventId)) return sentence("heat.undo.twice");
  return elapsed - event.atMs > undoMs ? sentence("heat.undo.late", { count: undoMs / 1000 }) : null;
}

/** Returns the newest tap that can still be undone, and for how long; null when there is none. */
export function undoable(
  events: readonly HeatEvent[],
  elapsed: number,
): { readonly event: HeatEvent; readonly leftMs: number } | null {
  const event = inTime(standingTaps(events)).at(-1);
  if (event === undefined || undoTrouble(events, event.id, elapsed) !== null) return null;
  return { event, leftMs: event.atMs + undoMs - elapsed };
}
