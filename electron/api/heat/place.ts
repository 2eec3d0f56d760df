import { Refusal } from "../../domain/refusal.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Present } from "../../store/reads/present.ts";
import { standingAttempts } from "../../store/tables/attempts.ts";
import { takeCall } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { type HeatLane, type TakenLane, takenLanes } from "../../store/tables/heat-lanes.ts";
import { type Heat, liveHeat } from "../../store/tables/heats.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import type { Desk } from "../door/desk.ts";
import { heldAthletes } from "../lanes/held.ts";
import { load } from "../lanes/load.ts";
import {
  doneBy,
  requireBib,
  requirePresent,
  requireRested,
  requireTesting,
  requireTurn,
} from "../station/who.ts";
import { freeLanes, heatToFill, put, type WantedHeat } from "./make.ts";
import { isOver } from "./over.ts";

export interface Placing {
  /** The athlete, by typed or scanned bib, or by id. */
  readonly who: { readonly bib: string } | { readonly athleteId: number };
  /** The first free one if undefined. */
  readonly lane: number | undefined;
  /** Their last one if undefined. */
  readonly variant: string | undefined;
  /** True if somebody decided that they need no more rest. */
  readonly evenResting: boolean;
}

/**
 * Puts an athlete in a lane by hand: a latecomer, or somebody standing there. An athlete already in this station's heat
 * stays in their lane, even while its clock runs.
 * @throws Refusal when they may not do this test now, still rest, or no lane is free.
 */
export function place(desk: Desk, wanted: WantedHeat, placing: Placing): HeatLane & { heatId: string } {
  return desk.store.write(["heats", "calls"], (db) => {
    const day = requireOpenDay(db);
    const who = requireWho(db, day, placing.who);
    const own = ownLane(db, day, wanted, who.athleteId);
    if (own !== undefined) return pickLane(own);
    const held = heldAthletes(db, day.id).has(who.athleteId);
    if (held) throw new Refusal("conflict", sentence("heat.elsewhere", { name: who.name }));
    const heat = heatToFill(db, desk, day, wanted);
    const now = desk.now().toISOString();
    requireMay(db, day, heat, who);
    if (!placing.evenResting) requireRested(db, day, who, heat.test, now);
    requireVariant(heat, placing.variant);
    const lane = requireFree(db, heat, placing.lane);
    takeCall(db, day.id, { athleteId: who.athleteId, test: heat.test, at: now, holder: heat.holder });
    return { heatId: heat.id, ...put(db, heat, lane, who.athleteId, placing.variant) };
  });
}

/** Returns the athlete's lane in this station's heat; undefined once that heat is over and another one is wanted. */
function ownLane(db: ReadableDb, day: Day, wanted: WantedHeat, athleteId: number): TakenLane | undefined {
  const heat = liveHeat(db, day.id, wanted.test, wanted.holder);
  if (heat === undefined || (heat.id !== wanted.heatId && isOver(load(db, heat)))) return undefined;
  return takenLanes(db, day.id).find((each) => each.heatId === heat.id && each.athleteId === athleteId);
}

function pickLane({ heatId, lane, athleteId, variant }: HeatLane & { heatId: string }) {
  return { heatId, lane, athleteId, variant };
}

function requireWho(db: ReadableDb, day: Day, who: Placing["who"]): Present {
  return "athleteId" in who ? requirePresent(db, day, who.athleteId) : requireBib(db, day, who.bib);
}

function requireMay(db: ReadableDb, day: Day, heat: Heat, who: Present): void {
  requireTesting(db, day, who, heat.test);
  if (doneBy(db, day, who.athleteId).has(heat.test) && !hasTrialsLeft(db, heat, who)) {
    throw new Refusal("conflict", sentence("station.done", { name: who.name }));
  }
  requireTurn(db, day, who, heat.test);
}

/** True if trials are left: one leap makes a mark and leaves the others to take. */
function hasTrialsLeft(db: ReadableDb, heat: Heat, who: Present): boolean {
  const standing = standingAttempts(db, heat.dayId, who.athleteId, heat.test);
  return standing.length < protocolOf(heat.test).slotSize(parametersOf(db, heat.dayId, heat.test));
}

/** @throws Refusal `bad-input` for an unknown variant of the test. */
export function requireVariant(heat: Heat, variant: string | undefined): void {
  if (variant !== undefined && !protocolOf(heat.test).variants.includes(variant)) {
    throw new Refusal("bad-input", sentence("station.variant"));
  }
}

function requireFree(db: ReadableDb, heat: Heat, wanted: number | undefined): number {
  const free = freeLanes(db, heat);
  const lane = wanted ?? free[0];
  if (lane === undefined) throw new Refusal("conflict", sentence("heat.full"));
  if (lane > heat.lanes) throw new Refusal("bad-input", sentence("heat.noLane", { lane }));
  if (!free.includes(lane)) throw new Refusal("conflict", sentence("heat.takenLane", { lane }));
  return lane;
}
