import { createHash } from "node:crypto";
import type { Athlete, Hall, Known } from "../../domain/plan/hall.ts";
import { type PlanSettings, usualSettings } from "../../domain/plan/settings.ts";
import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import type { Day } from "../../store/tables/days.ts";
import { assumedHall, untyped } from "./hall.ts";
import { knownOf } from "./known.ts";
import { plannedAthletes } from "./people.ts";

/** Most athletes that are planned for at once: a calculation's time grows with them (ours, no source). */
const mostAthletes = 400;

/**
 * All that a plan's figures follow from.
 * @public declarations of the procedures name it
 */
export interface PlanTask {
  readonly hall: Hall;
  readonly athletes: readonly Athlete[];
  readonly known: readonly Known[];
  readonly seed: number;
}

/** A task with what tells it from every other one, and the time of day from which its seconds count. */
export interface StampedTask {
  readonly task: PlanTask;
  readonly stamp: string;
  readonly begins: string;
}

/** The seed of a day for which nothing was saved. */
export const firstSeed = 1;

/** Returns what is planned for a day; the usual where nothing is. */
export function settingsOf(db: ReadableDb, day: Day): PlanSettings {
  return planOfDay(db, day.id)?.settings ?? usualSettings();
}

/** Returns what the plan of a day is worked out from, as it stands now. */
export function taskOf(db: ReadableDb, day: Day): StampedTask {
  const kept = planOfDay(db, day.id);
  const settings = kept?.settings ?? usualSettings();
  const task = {
    hall: assumedHall(settings, day),
    known: untyped(settings, knownOf(db, day)),
    athletes: plannedAthletes(db, day, settings),
    seed: kept?.seed ?? firstSeed,
  };
  const text = JSON.stringify([day.id, day.date, settings.begins, task]);
  return { task, begins: settings.begins, stamp: createHash("sha256").update(text).digest("hex") };
}

/** @throws Refusal `conflict` where there is nobody, or where there are too many to plan for */
export function requireWorkable({ task: { athletes } }: StampedTask): void {
  if (athletes.length === 0) throw new Refusal("conflict", sentence("plan.nobody"));
  if (athletes.length > mostAthletes) {
    throw new Refusal("conflict", sentence("plan.tooMany", { count: athletes.length, most: mostAthletes }));
  }
}
