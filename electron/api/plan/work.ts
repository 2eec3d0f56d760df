import { z } from "zod";
import { clockAfter } from "../../domain/day/clock.ts";
import { type LeagueSettings, usualSettings } from "../../domain/plan/settings.ts";
import type { WavesToCome, WhatIf } from "../../domain/plan/told.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { keepPlan, keepTold, planOfDay } from "../../store/tables/day-plans.ts";
import { type Day, dayById } from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import type { Calculator } from "../door/calculate.ts";
import { clockOnDay } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { allow } from "../door/trpc.ts";
import { isInUse } from "./in-use.ts";
import { newSeed } from "./seed.ts";
import { requireWorkable, type StampedTask, taskOf } from "./task.ts";
import { beginWork, type Work, type WorkKind, workKinds, worksOf } from "./works.ts";

const organiser = allow("organiser");

/**
 * Begins to work out the plan of the day at hand, or what changes to it would bring, and returns at once. What is
 * under way for the same settings goes on; for others it is stopped. The topic `plan` is announced at the end.
 */
export const work = organiser
  .input(z.object({ kind: z.enum(workKinds) }))
  .mutation(({ ctx: { desk }, input: { kind } }) => {
    const calculator = requireCalculator(desk);
    const { store } = desk;
    const day = requireDay(store.db);
    requireWorkable(taskOf(store.db, day));
    if (planOfDay(store.db, day.id) === undefined) saveUsual(desk, day.id);
    const begun = { dayId: day.id, of: taskOf(store.db, day) };
    const works = worksOf(store);
    const failed = (error: unknown) => console.error("A plan could not be worked out:", error);
    if (kind === "whatIfs") {
      return { id: beginWork(works, calculator, kind, begun, { ended: () => desk.tell("plan"), failed }).id };
    }
    const ended = (done: Work<"plan">) => keepFigures(desk, store, done);
    return { id: beginWork(works, calculator, kind, begun, { ended, failed }).id };
  });

/** Keeps the usual settings as the day's: what is told of a plan stands beside what it was told of. */
function saveUsual(desk: Desk, dayId: number): void {
  const plan = { settings: usualSettings(), seed: newSeed(desk), savedAt: desk.now().toISOString() };
  desk.store.write(["plan"], (db) => keepPlan(db, dayId, plan));
}

function requireCalculator({ calculator }: Desk): Calculator {
  if (calculator === null) throw new Refusal("unavailable", sentence("plan.notHere"));
  return calculator;
}

/** Keeps the figures of a plan that was worked out with the day, unless another store is in use by then. */
function keepFigures(desk: Desk, store: Desk["store"], { dayId, of, outcome }: Work<"plan">): void {
  if (outcome === null || !isInUse(desk, store)) {
    desk.tell("plan");
    return;
  }
  const { end, holdsUp, waits } = outcome;
  const told = { begins: of.begins, end, holdsUp, waits, athletes: of.task.athletes.length };
  const at = desk.now().toISOString();
  store.write(["plan"], (db) => {
    // An open day is compared with what was told before it.
    const isCompared = dayById(db, dayId)?.state !== "planned" && planOfDay(db, dayId)?.told != null;
    if (!isCompared) keepTold(db, dayId, told, at);
  });
}

/** Returns how far each calculation is. `stale`: the settings, the list or the rest have changed since it began. */
export const progress = organiser.query(({ ctx: { desk } }) => {
  const works = worksOf(desk.store);
  const { stamp } = taskOf(desk.store.db, requireDay(desk.store.db));
  const told = (kind: WorkKind) => {
    const one = works[kind];
    return one === undefined
      ? null
      : { id: one.id, state: one.state, done: one.done, stale: one.of.stamp !== stamp };
  };
  return { plan: told("plan"), whatIfs: told("whatIfs") };
});

/** Stops a calculation; one that is not under way stays as it is. */
export const stop = organiser
  .input(z.object({ kind: z.enum(workKinds) }))
  .mutation(({ ctx: { desk }, input: { kind } }) => {
    worksOf(desk.store)[kind]?.calculating.stop();
  });

/** Somebody for whom a day is planned; without a name where only their number was said. */
export interface PlannedPerson {
  readonly id: number;
  readonly league: string;
  readonly name: string;
  readonly number: string;
  readonly bib: number | null;
}

/** Returns the names of those for whom a plan was worked out. */
export function peopleOf(db: ReadableDb, day: Day, { task }: StampedTask): PlannedPerson[] {
  const names = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
  return task.athletes.map(({ id, league }) => {
    const { name = "", number = "", bib = null } = names.get(id) ?? {};
    return { id, league, name, number, bib };
  });
}

/** Returns the plan that was worked out last, with the people in it; null until one was since the program started. */
export const result = organiser.query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const done = worksOf(desk.store).plan;
  if (done?.outcome == null) return null;
  return {
    /** The instant from which all seconds count. */
    begins: clockOnDay(day, done.of.begins),
    stale: done.of.stamp !== taskOf(db, day).stamp,
    plan: done.outcome,
    people: peopleOf(db, day, done.of),
  };
});

/**
 * Returns what changes would bring, the greatest saving first; null until it was worked out since the program started.
 * Times at which leagues would come are times of day ("09:05"), as `save` takes them.
 */
export const whatIfs = organiser.query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const done = worksOf(desk.store).whatIfs;
  if (done?.outcome == null) return null;
  const { begins, stamp } = done.of;
  return {
    stale: stamp !== taskOf(db, requireDay(db)).stamp,
    whatIfs: done.outcome.map((whatIf) => onClock(whatIf, begins)),
  };
});

/**
 * What one or two changes would bring, with times of day ("09:05") at which leagues would come.
 * @public declarations of the procedures name it
 */
export interface WhatIfOnClock extends Pick<WhatIf, "changes" | "saved"> {
  readonly waves?: Omit<WavesToCome, "times"> & { readonly times: readonly LeagueOnClock[] };
}

type LeagueOnClock = Pick<LeagueSettings, "league" | "from" | "until">;

function onClock({ changes, saved, waves }: WhatIf, begins: string): WhatIfOnClock {
  if (waves === undefined) return { changes, saved };
  const times = waves.times.map(({ league, from, until }) => ({
    league,
    from: clockAfter(begins, from),
    until: clockAfter(begins, until),
  }));
  return { changes, saved, waves: { ...waves, times } };
}
