import { useEffect, useMemo, useState, useSyncExternalStore } from "react";
import { countInMs, foldHeat } from "../../../../../electron/domain/heats/fold.ts";
import type { HeatEvent } from "../../../../../electron/domain/heats/heat.ts";
import type { LengthUnit } from "../../../../../electron/domain/tests/protocol.ts";
import {
  type ParametersOf,
  protocols,
  type TestCode,
} from "../../../../../electron/domain/tests/registry.ts";
import { anchorOfTap, type HeatClock } from "../../../../sound/clock.ts";
import { keyOfLane } from "../../../../tests/live/liveKeys.ts";
import type { Live, LiveLane, Tapping } from "../../../../tests/live/tool.ts";
import type { LiveHeat } from "../../../../tests/live/types.ts";
import { clockOfHeat, settleClock } from "./heatClocks.ts";
import { outboxOf, pageTime } from "./heatOutboxes.ts";
import { followTime } from "./heatTime.ts";
import { type HeatOutboxView, outgoingEvents } from "./outgoing.ts";
import { onTableClock } from "./useTableClock.ts";

/** Ms between renderings of a running heat; smooth motion reads the clock each frame instead. */
const stepMs = 100;

/** Parses the frozen parameters of a heat by the test's own schema. */
export function parametersOf<Test extends TestCode>(test: Test, parameters: unknown): ParametersOf<Test> {
  return protocols[test].parameters.parse(parameters) as ParametersOf<Test>;
}

/** Returns the outbox of a heat; drops what the desk's view already has. */
export function useOutbox(heat: LiveHeat): HeatOutboxView {
  const outbox = outboxOf(heat.heatId);
  const view = useSyncExternalStore(outbox.subscribe, outbox.view);
  useEffect(() => {
    const ids = new Set(heat.events.map(({ id }) => id));
    if (heat.state === "running") ids.add(startIdOf(heat.heatId));
    outbox.seen(ids);
  }, [heat, outbox]);
  return view;
}

function startIdOf(heatId: string): string {
  return `${heatId} start`;
}

/** Starts a gathered heat at the tap: its clock runs from then on, whenever the desk hears of it. */
export function startHeat(heat: LiveHeat, timeStamp: number): void {
  const countIn = countInMs(heat.test, parametersOf(heat.test, heat.parameters));
  settleClock(heat.heatId, anchorOfTap(timeStamp, -countIn));
  outboxOf(heat.heatId).add({
    what: "start",
    id: startIdOf(heat.heatId),
    at: pageTime(timeStamp),
    tapped: onTableClock(timeStamp),
  });
}

/** Returns true if a heat's clock runs, for the desk or for this window, which has just started it. */
export function isRunning(heat: LiveHeat, { items }: HeatOutboxView): boolean {
  return heat.state === "running" || items.some(({ what }) => what === "start");
}

/** Returns the heat's time, in steps; null without a clock. */
function useElapsed(clock: HeatClock | null): number {
  const [elapsed, setElapsed] = useState(() => clock?.elapsed() ?? 0);
  useEffect(() => {
    if (clock === null) return;
    return followTime(clock, (now) =>
      setElapsed((shown) => (Math.floor(shown / stepMs) === Math.floor(now / stepMs) ? shown : now)),
    );
  }, [clock]);
  return elapsed;
}

/** Returns a running heat, with this window's taps folded in at once. */
export function useLive<Test extends TestCode>(
  test: Test,
  heat: LiveHeat,
  outbox: HeatOutboxView,
  lengths: LengthUnit,
): Live<Test> | null {
  const clock = clockOfHeat(heat.heatId);
  const elapsedMs = useElapsed(clock);
  const parameters = useMemo(() => parametersOf(test, heat.parameters), [test, heat.parameters]);
  const known = useMemo(() => new Set(heat.events.map(({ id }) => id)), [heat.events]);
  if (clock === null) return null;
  const events: HeatEvent[] = [
    ...(heat.events as HeatEvent[]),
    ...outgoingEvents(outbox.items).filter(({ id }) => !known.has(id)),
  ];
  const inputs = heat.lane.map(({ lane, prior }) => ({ lane, prior }));
  const folded = foldHeat(test, parameters, inputs as never, events, elapsedMs);
  return {
    ...{
      test,
      parameters,
      heat: { ...heat, events: events as LiveHeat["events"] },
      clock,
      elapsedMs,
      lengths,
    },
    lanes: heat.lane.flatMap((lane): LiveLane<Test>[] => {
      const state = folded.find((each) => each.lane === lane.lane);
      return state === undefined ? [] : [{ lane: lane.lane, key: keyOfLane(lane.lane), in: lane, state }];
    }),
    tap: (tapping) => tap(heat.heatId, clock, tapping),
    takeBack(eventId) {
      const lane = events.find(({ id }) => id === eventId)?.lane ?? null;
      takeBack(heat.heatId, clock, { id: eventId, lane });
    },
  };
}

function tap(
  heatId: string,
  clock: HeatClock,
  { lane, kind, detail = {}, timeStamp, atMs }: Tapping,
): string {
  const id = crypto.randomUUID();
  const at = atMs ?? clock.elapsedAt(timeStamp ?? performance.now());
  outboxOf(heatId).add({ what: "tap", id, tap: { id, lane, kind, detail, atMs: Math.round(at) } });
  return id;
}

function takeBack(heatId: string, clock: HeatClock, tapped: Pick<HeatEvent, "id" | "lane">): void {
  const { id: eventId, lane } = tapped;
  const atMs = Math.round(clock.elapsed());
  outboxOf(heatId).add({ what: "undo", id: crypto.randomUUID(), eventId, lane, atMs });
}
