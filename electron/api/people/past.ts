import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { writeMark } from "../../domain/tests/written.ts";
import { sentence } from "../../domain/words.ts";
import { readPastRow } from "../../sheets/past.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import {
  addPastMark,
  addPastVoid,
  hasPastVoid,
  type PastMark,
  pastMarksOf,
  pastMarkValue,
  pastVoidsOf,
  removePastMark,
} from "../../store/tables/past-marks.ts";
import { isoDate } from "../door/calendar.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";
import { requireAthlete } from "./person.ts";

/** An athlete's imported results: those that stand, and those that were removed or corrected, newest first. */
export const pastResults = allow("organiser")
  .input(z.object({ athleteId: z.int(), lengths: lengthsSchema }))
  .query(({ ctx: { desk }, input: { athleteId, lengths } }) => {
    const { db } = desk.store;
    const write = (test: PastMark["test"], value: number) =>
      writeMark(test, { state: "complete", value }, lengths);
    return {
      standing: pastMarksOf(db, athleteId).map(({ athleteId: _, ...mark }) => ({
        ...mark,
        written: write(mark.test, mark.value),
      })),
      voided: pastVoidsOf(db, athleteId).map(({ athleteId: _, ...line }) => ({
        ...line,
        written: write(line.test, line.value),
        instead: line.instead === null ? null : write(line.test, line.instead),
      })),
    };
  });

const voiding = z.object({
  /** Made by the client, so that a retry is known. */
  id: z.uuid(),
  athleteId: z.int(),
  test: z.enum(testCodes),
  variant: z.string().max(20),
  fingerprint: z.string().max(1000),
  date: z.iso.date(),
  /** What stands, as whoever removes it saw it; in grains. */
  value: z.int(),
  /** What it should have been, written as in a sheet; null to remove it. */
  instead: z.string().max(40).nullable(),
  reason: reasonSchema,
  by: initialsSchema,
  /** Whether somebody has answered that an unusual result is right. */
  sure: z.boolean().default(false),
});

type Voiding = z.infer<typeof voiding>;

/** Removes an imported result with a reason, or corrects it. The same id again changes nothing. */
export const voidPast = allow("organiser")
  .input(voiding)
  .mutation(({ ctx: { desk }, input }) => {
    const now = desk.now();
    return desk.store.write(["people", "attempts"], (db) => {
      if (hasPastVoid(db, input.id)) return { outcome: "done" as const };
      const athlete = requireAthlete(db, input.athleteId);
      requireStanding(db, input);
      const read = input.instead === null ? null : readInstead(athlete, input, isoDate(now));
      if (read?.unusual != null && !input.sure) {
        return { outcome: "ask" as const, question: read.unusual };
      }
      replace(db, input, read?.value ?? null, now.toISOString());
      return { outcome: "done" as const };
    });
  });

/** @throws Refusal `conflict` when something else stands by now */
function requireStanding(db: ReadableDb, mark: Voiding): void {
  if (pastMarkValue(db, mark) !== mark.value) throw new Refusal("conflict", sentence("pastResult.gone"));
}

/** Reads the right value as a sheet of past results is read. @throws Refusal `bad-input` */
function readInstead(athlete: Athlete, { test, variant, date, instead }: Voiding, today: string) {
  const { league, name, number } = athlete;
  const cells: Readonly<Record<string, string>> = { league, name, number, test, variant, date };
  return readPastRow((column) => (column === "mark" ? (instead ?? "").trim() : (cells[column] ?? "")), {
    today,
    order: "day",
  });
}

function replace(db: WritableDb, input: Voiding, instead: number | null, at: string): void {
  if (instead === input.value) throw new Refusal("bad-input", sentence("pastResult.same"));
  const { id, athleteId, test, variant, fingerprint, date, value, reason, by } = input;
  const mark = { athleteId, test, variant, fingerprint, date };
  addPastVoid(db, { ...mark, id, value, instead, reason, by, at });
  removePastMark(db, mark);
  if (instead !== null) addPastMark(db, { ...mark, value: instead });
}
