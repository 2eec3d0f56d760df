import { foldHeat } from "../../../electron/domain/heats/fold.ts";
import type { FoldedLane, HeatEvent } from "../../../electron/domain/heats/heat.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { type AttemptOf, defaultParameters, type LaneOf } from "../../../electron/domain/tests/registry.ts";

let made = 0;

/** A tap of lane 1 unless another is given, under an id of its own. */
export function tap(kind: string, atMs: number, detail: unknown = {}, lane: number | null = 1): HeatEvent {
  made += 1;
  return { id: `tap-${made}`, lane, kind, atMs, detail };
}

/** Takes a tap back. */
export function back(event: HeatEvent, atMs = event.atMs + 1000): HeatEvent {
  return tap("undo", atMs, { eventId: event.id }, event.lane);
}

/** Lane 1 after these taps under the handbook's parameters, looked at after the last of them unless it is said when. */
export function laneAfter<Test extends TestCode>(
  test: Test,
  events: readonly HeatEvent[],
  elapsed: number | null = Math.max(0, ...events.map(({ atMs }) => atMs)),
  prior: readonly AttemptOf<Test>[] = [],
): FoldedLane<LaneOf<Test>> {
  const [lane] = foldHeat(test, defaultParameters(test), [{ lane: 1, prior }], events, elapsed);
  if (lane === undefined) throw new Error("There is always a lane 1.");
  return lane;
}
