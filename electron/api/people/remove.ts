import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { removeAthlete } from "../../store/erasure/erase.ts";
import { heldRows } from "../../store/erasure/held.ts";
import { type Athlete, athleteById } from "../../store/tables/athletes.ts";
import { dayById } from "../../store/tables/days.ts";
import { allow } from "../door/trpc.ts";
import { forgetNames } from "./search.ts";

/** Returns why somebody is more than a typing mistake: they have results, or were on a day that is over. */
export function whyNotRemoved(db: ReadableDb, { id, name }: Athlete): Sentence | null {
  const { attempt, past_mark, past_void, heat_event, study_reading, entrant } = heldRows(db, id);
  const measured = [attempt, past_mark, past_void, heat_event, study_reading];
  if (measured.some((rows) => rows.length > 0)) return sentence("remove.measured", { name });
  const over = entrant.some(({ day_id }) => dayById(db, day_id)?.state === "closed");
  return over ? sentence("remove.earlier", { name }) : null;
}

/** Removes somebody added by mistake, without results. The same again changes nothing. */
export const remove = allow("organiser")
  .input(z.object({ athleteId: z.int() }))
  .mutation(({ ctx: { desk }, input: { athleteId } }) => {
    desk.store.write(["people", "entrants", "calls", "heats"], (db) => {
      const athlete = athleteById(db, athleteId);
      if (athlete === undefined) return;
      const why = whyNotRemoved(db, athlete);
      if (why !== null) throw new Refusal("conflict", why);
      removeAthlete(db, athlete);
    });
    forgetNames(desk.store);
  });
