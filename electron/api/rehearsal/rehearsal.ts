import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { mostRosters } from "../../domain/sheets/limits.ts";
import { defaultParameters, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { dayAtHand, dayProtocols } from "../../store/tables/days.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { type RehearsalStage, rehearsalStage } from "../door/rehearsal-shapes.ts";
import type { DayToRehearse } from "../door/rehearse.ts";
import { allow, router } from "../door/trpc.ts";
import { choicesShape } from "../intake/choices.ts";
import { uploads } from "../intake/uploads.ts";

/** Sheets uploaded by `intake.upload`. The evening before there are no results yet. */
const { headerLine, worksheet, league, date, dateOrder, blanks } = choicesShape;
const sheet = z.object({
  uploadId: z.uuid(),
  /** The file's, to tell two rosters apart. */
  name: z.string().max(300).default(""),
  said: z.object({ headerLine, worksheet, league, date, dateOrder, blanks }).default({ blanks: {} }),
});
const brought = z.object({
  rosters: z.array(sheet).min(1).max(mostRosters),
  past: sheet.nullable(),
  results: sheet.nullable(),
});

/** Minutes of rest for a day that is not planned yet, as in a new day. */
const usualRest = 5;

/** Rehearses a day with the leagues' sheets. */
export const rehearsal = router({
  /**
   * Holds the whole day with these sheets on a store of its own, deleted afterwards. From the desk's store it reads
   * only the planned day's rules, and changes nothing. Yields each step, then the result.
   */
  run: allow("organiser")
    .input(brought)
    .subscription(async function* ({ ctx: { desk }, input }) {
      for await (const stage of stages(desk, input)) yield rehearsalStage.parse(stage);
    }),
});

async function* stages(desk: Desk, ids: z.infer<typeof brought>): AsyncGenerator<RehearsalStage> {
  try {
    if (desk.rehearse === null) throw new Refusal("unavailable", sentence("rehearsal.none"));
    yield* desk.rehearse(dayOf(desk, ids));
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    yield { stage: "refused", sheet: "roster", sentence: error.sentence, file: "", form: null };
  }
}

/** @throws Refusal `conflict` while a day is open: its stations need the desk for themselves. */
function dayOf(desk: Desk, { rosters, past, results }: z.infer<typeof brought>): DayToRehearse {
  const { db } = desk.store;
  const planned = dayAtHand(db);
  if (planned?.state === "open" && desk.kind === "own") {
    throw new Refusal("conflict", sentence("rehearsal.open"));
  }
  const sheetOf = ({ uploadId, name, said }: z.infer<typeof sheet>) => ({
    ...{ name, said },
    bytes: uploads.find(desk, uploadId).bytes,
  });
  return {
    date: planned?.date ?? isoDate(desk.now()),
    restMinutes: planned?.restMinutes ?? usualRest,
    protocols:
      planned === undefined
        ? testCodes.map((test) => ({ test, parameters: defaultParameters(test) }))
        : dayProtocols(db, planned.id),
    rosters: rosters.map(sheetOf),
    past: past === null ? null : sheetOf(past),
    results: results === null ? null : sheetOf(results),
  };
}
