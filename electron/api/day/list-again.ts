import { Refusal } from "../../domain/refusal.ts";
import { sentence } from "../../domain/words.ts";
import { allDays } from "../../store/tables/days.ts";
import { entrants, expectEntrant } from "../../store/tables/entrants.ts";
import { requireDay } from "../door/at-hand.ts";
import { allow } from "../door/trpc.ts";

/**
 * Puts everybody who was on the list of the newest closed day on that of the day at hand, as expected; whoever is on it
 * stays as they are, so that doing it twice changes nothing. Returns how many were added.
 */
export const listAgain = allow("organiser").mutation(({ ctx: { desk } }) =>
  desk.store.write(["entrants"], (db) => {
    const day = requireDay(db);
    const last = allDays(db).find(({ id, state }) => state === "closed" && id !== day.id);
    if (last === undefined) throw new Refusal("not-found", sentence("dayPlan.noneBefore"));
    const at = desk.now().toISOString();
    const added = entrants(db, last.id).filter(({ athleteId }) => expectEntrant(db, day.id, athleteId, at));
    return { added: added.length };
  }),
);
