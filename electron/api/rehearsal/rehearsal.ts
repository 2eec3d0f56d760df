import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { defaultParameters, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { dayAtHand, dayProtocols } from "../../store/tables/days.ts";
import { isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { type RehearsalStage, rehearsalStage } from "../door/rehearsal-shapes.ts";
import type { DayToRehearse } from "../door/rehearse.ts";
import { allow, router } from "../door/trpc.ts";
import { uploadOf } from "../intake/uploads.ts";

/** Sheets that were brought by `intake.upload`. The evening before there are no results yet. */
const brought = z.object({
  roster: z.uuid(),
  past: z.uuid().nullable(),
  results: z.uuid().nullable(),
});

/** Minutes of rest of a day that nobody has planned yet, as a new day has them. */
const usualRest = 5;

/** Trying the leagues' sheets out before the day. */
export const rehearsal = router({
  /**
   * Holds the whole day with these sheets on a store of its own, which is gone afterwards: nothing of the desk's store is
   * read but how the planned day will be held, and nothing of it changes. Tells each step, then what came of it.
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
    yield { stage: "refused", sheet: "roster", sentence: error.sentence };
  }
}

/** @throws Refusal `conflict` while a day is open: its stations need the desk for themselves. */
function dayOf(desk: Desk, { roster, past, results }: z.infer<typeof brought>): DayToRehearse {
  const { db } = desk.store;
  const planned = dayAtHand(db);
  if (planned?.state === "open" && desk.kind === "own") {
    throw new Refusal("conflict", sentence("rehearsal.open"));
  }
  const bytes = (id: string | null) => (id === null ? null : uploadOf(desk, id).bytes);
  return {
    date: planned?.date ?? isoDate(desk.now()),
    restMinutes: planned?.restMinutes ?? usualRest,
    protocols:
      planned === undefined
        ? testCodes.map((test) => ({ test, parameters: defaultParameters(test) }))
        : dayProtocols(db, planned.id),
    roster: uploadOf(desk, roster).bytes,
    past: bytes(past),
    results: bytes(results),
  };
}
