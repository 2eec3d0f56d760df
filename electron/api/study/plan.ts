import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { type SeriesSource, whyNotPlanned } from "../../domain/study/plan.ts";
import { leastAthletes, mostAthletes, studyKinds } from "../../domain/study/shape.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Day, dayById } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { addStudy, dropStudy, type StudySeries, seriesOf, studyById } from "../../store/tables/studies.ts";
import { hasReadings } from "../../store/tables/study-readings.ts";
import { initialsSchema } from "../door/said.ts";
import { testSchema } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";

const seriesSchema = z.discriminatedUnion("from", [
  /** The marks of a day as they stand; of judges, those that one of them entered. */
  z.object({ from: z.literal("marks"), dayId: z.int(), judge: initialsSchema.optional() }),
  /** Readings that are brought: a judge's, or those of a visit on a date. */
  z.object({ from: z.literal("judge"), judge: initialsSchema }),
  z.object({ from: z.literal("visit"), date: z.iso.date() }),
]);

const planSchema = z.object({
  /** Made by the client, so that a retry is known. */
  id: z.uuid(),
  test: testSchema,
  variant: z.string().max(20),
  kind: z.enum(studyKinds),
  /** The day whose bibs its sheets mean. */
  dayId: z.int().nullable(),
  series: z.array(seriesSchema).max(10),
  aim: z.int().min(leastAthletes).max(mostAthletes),
  by: initialsSchema,
});

type Plan = z.output<typeof planSchema>;

/** Plans a study. The same id again changes nothing. */
export const plan = allow("organiser")
  .input(planSchema)
  .mutation(({ ctx: { desk }, input }) => {
    const at = desk.now().toISOString();
    desk.store.write(["studies"], (db) => {
      const { id, test, variant, kind, dayId, aim, by } = input;
      const series = seriesIn(db, input);
      const known = studyById(db, id);
      if (known !== undefined) return requireSame(db, id, series);
      addStudy(db, { id, test, variant, kind, dayId, aim, by, at }, series);
    });
    return { id: input.id };
  });

/** Discards a study that never had a reading; nothing more happens the second time. @throws Refusal `conflict` */
export const drop = allow("organiser")
  .input(z.object({ studyId: z.uuid() }))
  .mutation(({ ctx: { desk }, input: { studyId } }) => {
    desk.store.write(["studies"], (db) => {
      if (hasReadings(db, studyId)) throw new Refusal("conflict", sentence("study.hasReadings"));
      dropStudy(db, studyId);
    });
  });

/** @throws Refusal `conflict` for another study's id */
function requireSame(db: ReadableDb, id: string, series: readonly StudySeries[]): void {
  if (!isDeepStrictEqual(seriesOf(db, id), series))
    throw new Refusal("conflict", sentence("study.otherStudy"));
}

function seriesIn(db: ReadableDb, planned: Plan): StudySeries[] {
  const { test, variant, kind, dayId } = planned;
  if (!protocolOf(test).variants.includes(variant))
    throw new Refusal("bad-input", sentence("study.plan.variant"));
  if (dayId !== null) requireHeld(db, dayId);
  const sources = planned.series.map((each) => sourceOf(db, each));
  const why = whyNotPlanned(kind, sources);
  if (why !== null) throw new Refusal("bad-input", why);
  requireSameDay(planned);
  requireOneRule(db, planned);
  return planned.series.map((each, index) => ({
    position: index + 1,
    dayId: each.from === "marks" ? each.dayId : null,
    judge: kind === "judges" ? (sources[index]?.judge ?? "") : "",
    date: kind === "visits" ? (sources[index]?.date ?? null) : null,
  }));
}

function sourceOf(db: ReadableDb, series: Plan["series"][number]): SeriesSource {
  if (series.from === "marks") {
    const { dayId, judge = "" } = series;
    return { from: "marks", dayId, date: requireHeld(db, dayId).date, judge };
  }
  if (series.from === "visit") return { from: "readings", judge: "", date: series.date };
  return { from: "readings", judge: series.judge, date: null };
}

/** A planned day may still be discarded. @throws Refusal */
function requireHeld(db: ReadableDb, dayId: number): Day {
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("summary.noDay"));
  if (day.state === "planned") throw new Refusal("conflict", sentence("study.plan.notHeld"));
  return day;
}

/** Judges read the attempts of one day, whose bibs they write down. @throws Refusal `bad-input` */
function requireSameDay({ kind, dayId, series }: Plan): void {
  const isOther = series.some((each) => each.from === "marks" && each.dayId !== dayId);
  if (kind === "judges" && isOther) throw new Refusal("bad-input", sentence("study.plan.otherDay"));
}

/** @throws Refusal `conflict` where the days' marks were made by different rules */
function requireOneRule(db: ReadableDb, { test, variant, series }: Plan): void {
  const rules = series.flatMap((each) =>
    each.from === "marks" ? [fingerprint(test, variant, parametersOf(db, each.dayId, test))] : [],
  );
  if (new Set(rules).size > 1) throw new Refusal("conflict", sentence("study.plan.otherRules"));
}
