import { fillFrom } from "../../domain/heats/fill.ts";
import { takeCall } from "../../store/tables/calls.ts";
import { type HeatLane, lanesOf } from "../../store/tables/heat-lanes.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import type { Desk } from "../door/desk.ts";
import { heldAthletes } from "../lanes/held.ts";
import { calledElsewhere } from "../station/callers.ts";
import { queueOf } from "../station/view.ts";
import { nobodyToCall } from "../station/who.ts";
import { freeLanes, heatToFill, put, type WantedHeat } from "./make.ts";

export interface Gathered {
  readonly heatId: string;
  readonly placed: HeatLane[];
  /** The reason for free lanes although somebody waits: they still rest. */
  readonly resting: { readonly bib: number; readonly readyAt: string } | null;
}

/** Calls the next athletes into free lanes. @throws Refusal `conflict` while the clock runs, or with none to call. */
export function gather(desk: Desk, wanted: WantedHeat): Gathered {
  return desk.store.write(["heats", "calls"], (db) => {
    const day = requireOpenDay(db);
    const heat = heatToFill(db, desk, day, wanted);
    const now = desk.now().toISOString();
    const own = lanesOf(db, heat.id);
    const taken = new Set([
      ...heldAthletes(db, day.id),
      // Whoever has a lane of this heat gets no second one in it, done or not.
      ...own.map(({ athleteId }) => athleteId),
      ...calledElsewhere(db, day, heat).keys(),
    ]);
    const free = freeLanes(db, heat);
    const { called, resting } = fillFrom(queueOf(db, day, heat.test, now), taken, free.length, now);
    if (called.length === 0 && own.length === 0) throw nobodyToCall(resting, now);
    const placed = called.map(({ athleteId, calledAt }, index) => {
      takeCall(db, day.id, { athleteId, test: heat.test, at: calledAt ?? now, holder: heat.holder });
      return put(db, heat, free[index] ?? 0, athleteId);
    });
    const rest = resting === null ? null : { bib: resting.bib, readyAt: resting.readyAt };
    return { heatId: heat.id, placed, resting: rest };
  });
}
