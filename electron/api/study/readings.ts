import { randomUUID } from "node:crypto";
import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import { markIn } from "../../sheets/past.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import type { Study } from "../../store/tables/studies.ts";
import {
  addReading,
  type NewReading,
  readingById,
  type SeriesPlace,
  standingReadings,
} from "../../store/tables/study-readings.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema } from "../door/shapes.ts";
import { allow } from "../door/trpc.ts";
import { requireAthlete } from "../people/person.ts";
import { besideOf } from "./beside.ts";
import { requireSeries } from "./require.ts";
import { athleteTyped, peopleOf } from "./who.ts";

const place = { studyId: z.uuid(), position: z.int().positive().max(4) };
const typed = {
  /** Made by the client, so that a retry is known. */
  id: z.uuid(),
  ...place,
  by: initialsSchema,
  lengths: lengthsSchema,
  /** Whether somebody has answered that an unusual reading is right. */
  sure: z.boolean().default(false),
};
const markSchema = z.string().max(40);

/** What a reading came to: a question about an unusual one, or whose it is now. */
type Entered =
  | { readonly outcome: "ask"; readonly question: Sentence }
  | { readonly outcome: "done"; readonly name: string };

/** Enters one athlete's reading, by bib or name. The same id again changes nothing. */
export const enter = allow("organiser")
  .input(z.object({ ...typed, who: z.string().max(80), mark: markSchema }))
  .mutation(({ ctx: { desk }, input: { who, mark, sure, lengths, ...rest } }): Entered => {
    const at = desk.now().toISOString();
    return desk.store.write(["studies"], (db) => {
      const { study } = requireSeries(db, rest);
      const athlete = athleteTyped(peopleOf(db, study), who);
      const read = readTyped(study, mark, lengths);
      const reading = { ...rest, athleteId: athlete.id, value: read.value, reason: "", at };
      if (isKnown(db, reading)) return { outcome: "done", name: athlete.name };
      refuseSecond(db, study, reading, athlete.name, lengths);
      const beside = besideOf(db, study);
      const whyNot = beside.whyNot(athlete);
      if (whyNot !== null) throw new Refusal("conflict", whyNot);
      const question = read.unusual ?? beside.ask(athlete, reading, lengths);
      if (question !== null && !sure) return { outcome: "ask", question };
      addReading(db, { ...reading, source: "keyed" });
      return { outcome: "done", name: athlete.name };
    });
  });

/** Corrects a reading with a reason, or cancels it (`mark`: null). The same id again changes nothing. */
export const correct = allow("organiser")
  .input(z.object({ ...typed, athleteId: z.int(), mark: markSchema.nullable(), reason: reasonSchema }))
  .mutation(({ ctx: { desk }, input: { mark, sure, lengths, ...rest } }): Entered => {
    const at = desk.now().toISOString();
    return desk.store.write(["studies"], (db) => {
      const { study } = requireSeries(db, rest);
      const { name } = requireAthlete(db, rest.athleteId);
      const read = mark === null ? null : readTyped(study, mark, lengths);
      const reading = { ...rest, value: read?.value ?? null, at };
      if (isKnown(db, reading)) return { outcome: "done", name };
      if (standingOf(db, reading) === undefined) throw new Refusal("conflict", sentence("study.gone"));
      const question = read === null ? null : questionAbout(db, study, { ...rest, name, read, lengths });
      if (question !== null && !sure) return { outcome: "ask", question };
      addReading(db, { ...reading, source: "keyed" });
      return { outcome: "done", name };
    });
  });

/** Cancels all readings of one series, as after a sheet of somebody else's; nothing more happens the second time. */
export const clear = allow("organiser")
  .input(z.object({ ...place, by: initialsSchema, reason: reasonSchema }))
  .mutation(({ ctx: { desk }, input }) => {
    const at = desk.now().toISOString();
    return desk.store.write(["studies"], (db) => {
      requireSeries(db, input);
      const own = standingReadings(db, input.studyId).filter(({ position }) => position === input.position);
      for (const { athleteId } of own) cancel(db, { ...input, athleteId, at });
      return { cancelled: own.length };
    });
  });

function cancel(db: WritableDb, reading: Omit<NewReading, "id" | "value" | "source">): void {
  addReading(db, { ...reading, id: randomUUID(), value: null, source: "keyed" });
}

/** Reads a result as it is written in a sheet; heights in the unit that the screen shows. @throws RowRefused */
function readTyped({ test }: Study, mark: string, lengths: LengthUnit) {
  const unit = protocolOf(test).grain.unit === "cm" ? lengths : "";
  return markIn((column) => ({ mark: mark.trim(), unit })[column] ?? "", test);
}

interface Correcting {
  readonly position: number;
  readonly athleteId: number;
  readonly name: string;
  readonly read: ReturnType<typeof readTyped>;
  readonly lengths: LengthUnit;
}

/** Returns what is asked about a corrected reading; null for a likely one. */
function questionAbout(db: ReadableDb, study: Study, corrected: Correcting): Sentence | null {
  const { position, athleteId: id, name, read, lengths } = corrected;
  return read.unusual ?? besideOf(db, study).ask({ id, name }, { position, value: read.value }, lengths);
}

/** True for a reading that was entered before under this id. @throws Refusal `conflict` for another one's id */
export function isKnown(
  db: ReadableDb,
  reading: Pick<NewReading, "id" | "studyId" | "position" | "athleteId" | "value">,
) {
  const known = readingById(db, reading.id);
  if (known === undefined) return false;
  const isSame =
    known.studyId === reading.studyId &&
    known.position === reading.position &&
    known.athleteId === reading.athleteId &&
    known.value === reading.value;
  if (!isSame) throw new Refusal("conflict", sentence("study.otherReading"));
  return true;
}

function standingOf(db: ReadableDb, { studyId, position, athleteId }: SeriesPlace & { athleteId: number }) {
  return standingReadings(db, studyId).find(
    (each) => each.position === position && each.athleteId === athleteId,
  );
}

/** @throws Refusal `conflict` for an athlete whose reading is there already, by another id */
export function refuseSecond(
  db: ReadableDb,
  { test }: Study,
  reading: SeriesPlace & { readonly athleteId: number },
  name: string,
  lengths: LengthUnit,
): void {
  const held = standingOf(db, reading);
  if (held === undefined) return;
  const { number } = protocolOf(test).write(held.value, lengths);
  throw new Refusal("conflict", sentence("study.twice", { name, held: number }));
}
