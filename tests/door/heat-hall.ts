import { randomUUID } from "node:crypto";
import { foldHeat } from "../../electron/domain/heats/fold.ts";
import type { FoldedLane } from "../../electron/domain/heats/heat.ts";
import type { LaneOf, TestCode } from "../../electron/domain/tests/registry.ts";
import { attemptsOfDay, type KeptAttempt } from "../../electron/store/tables/attempts.ts";
import type { TestDesk } from "./desk.ts";
import { bringTo, type StationDay, stationDay } from "./station-day.ts";

type Caller = ReturnType<TestDesk["as"]>["heat"];
export type HeatView = Awaited<ReturnType<Caller["view"]>>;
type SentTap = Parameters<Caller["tap"]>[0]["events"][number];

/** A station with a live heat, driven as its screen drives it. */
export interface Hall extends StationDay {
  readonly heat: Caller;
}

export const by = "QA";

/** The six of the station's day, brought to `test` and rested. */
export async function hallAt(test: TestCode, file?: string): Promise<Hall> {
  const day = await stationDay(file);
  for (const bib of [1, 2, 3, 4, 5, 6]) await bringTo(day, bib, test);
  day.clock.pass(6);
  return { ...day, heat: day.as("station").heat };
}

/** A tap under an id of its own. */
export function sent(lane: number | null, kind: string, atMs: number, detail: unknown = {}): SentTap {
  return { id: randomUUID(), lane, kind, atMs, detail };
}

/** A heat with so many lanes filled; its clock is at time 0 where all start together. */
export async function startedHeat(hall: Hall, test: TestCode, lanes: number): Promise<string> {
  const { heatId } = await hall.heat.gather({ test, heatId: randomUUID(), lanes, by });
  if (test === "agility" || test === "vertical") return heatId;
  const { elapsedMs } = await hall.heat.start({ heatId, startedAgoMs: 0 });
  hall.clock.tick(-elapsedMs);
  return heatId;
}

export function liveOf(view: HeatView): NonNullable<HeatView["heat"]> {
  if (view.heat === null) throw new Error("There is no heat at hand.");
  return view.heat;
}

/** The lanes as a screen folds them from what it is told. */
export async function lanesOf<Test extends TestCode>(
  hall: Hall,
  test: Test,
): Promise<FoldedLane<LaneOf<Test>>[]> {
  const heat = liveOf(await hall.heat.view({ test }));
  const inputs = heat.lane.map(({ lane, prior }) => ({ lane, prior }));
  return foldHeat(test, heat.parameters as never, inputs as never, heat.events, heat.elapsedMs);
}

/** Attempts that live heats entered, and whether each stands. */
export function entered(hall: Hall): { bib: number; seen: unknown; stands: boolean }[] {
  const bibs = new Map([1, 2, 3, 4, 5, 6].map((bib) => [hall.idOf(bib), bib]));
  return fromHeats(hall).map(({ athleteId, seen, void: ended }) => ({
    bib: bibs.get(athleteId) ?? 0,
    seen,
    stands: ended === null,
  }));
}

export function fromHeats({ desk, dayId }: Hall): KeptAttempt[] {
  return attemptsOfDay(desk.store.db, dayId).filter(({ source }) => source === "heat");
}

/** Bibs by lane, 0 for a free one. */
export function bibsByLane(view: HeatView): number[] {
  const heat = liveOf(view);
  return Array.from(
    { length: heat.lanes },
    (_, index) => heat.lane.find(({ lane }) => lane === index + 1)?.who.bib ?? 0,
  );
}
