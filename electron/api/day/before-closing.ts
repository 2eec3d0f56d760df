import { testCodes } from "../../domain/tests/registry.ts";
import { everybody } from "../../store/reads/present.ts";
import { liveHeats } from "../../store/tables/heats.ts";
import { requireDay } from "../door/at-hand.ts";
import { allow } from "../door/trpc.ts";
import { isOver } from "../heat/over.ts";
import { load } from "../lanes/load.ts";
import { queueOf, runnersOf } from "../station/view.ts";

/** Names that are told of those who are missing; the others are a number. */
const told = 4;

/** Returns what the day at hand lacks before it is closed: athletes not come, athletes waiting, heats that are not over. */
export const beforeClosing = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const now = desk.now().toISOString();
  const people = everybody(db, day.id);
  const runners = runnersOf(db, day, now);
  const nameOf = new Map(people.map(({ athleteId, name }) => [athleteId, name]));
  const waiting = testCodes.map((test) => {
    const names = queueOf(db, day, test, now, runners).map(({ athleteId }) => nameOf.get(athleteId) ?? "");
    return { test, ...peopleOf(names) };
  });
  return {
    expected: peopleOf(people.filter(({ state }) => state === "expected").map(({ name }) => name)),
    waiting: waiting.filter(({ count }) => count > 0),
    /** Tests with a heat at hand in which somebody is not done yet, at the table or at any device. */
    heats: [
      ...new Set(
        liveHeats(db, day.id)
          .filter((heat) => !isOver(load(db, heat)))
          .map(({ test }) => test),
      ),
    ],
  };
});

function peopleOf(names: readonly string[]) {
  return { count: names.length, names: names.slice(0, told) };
}
