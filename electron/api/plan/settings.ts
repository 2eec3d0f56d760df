import { z } from "zod";
import { secondsAfter } from "../../domain/day/clock.ts";
import { type PlanSettings, planSettings, usualSettings } from "../../domain/plan/settings.ts";
import { Refusal } from "../../domain/refusal.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { keepPlan, keepTold, planOfDay } from "../../store/tables/day-plans.ts";
import { dayById } from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import { allow } from "../door/trpc.ts";
import { stationsOf } from "./hall.ts";
import { knownOf } from "./known.ts";
import { leaguesOf } from "./people.ts";
import { newSeed } from "./seed.ts";

/** Returns what is planned for the day at hand, with all that was not said filled in, and where each time comes from. */
export const settings = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const kept = planOfDay(db, day.id);
  const said = kept?.settings ?? usualSettings();
  return {
    dayId: day.id,
    date: day.date,
    state: day.state,
    /** ISO 8601; null where nobody has saved a plan. */
    savedAt: kept?.savedAt ?? null,
    begins: said.begins,
    leagues: leaguesOf(db, day, said),
    stations: stationsOf(said, knownOf(db, day)),
    judges: said.judges,
    restMinutes: day.restMinutes,
    breaks: said.breaks,
    middleIsFree: said.middleIsFree,
    boundMinutes: said.boundMinutes,
    /** What was told of the plan last, seconds from the beginning; null until it is worked out. */
    told: kept?.told ?? null,
  };
});

/** Keeps what is planned for the day at hand. What was told of it goes, unless the day is open: it is compared with that. */
export const save = allow("organiser")
  .input(z.object({ dayId: z.int(), settings: planSettings }))
  .mutation(({ ctx: { desk }, input: { dayId, settings: said } }) => {
    requireSensible(said);
    const savedAt = desk.now().toISOString();
    desk.store.write(["plan"], (db) => {
      const day = requireOpenToPlan(db, dayId);
      const seed = planOfDay(db, dayId)?.seed ?? newSeed(desk);
      keepPlan(db, dayId, { settings: said, seed, savedAt });
      if (day.state === "planned") keepTold(db, dayId, null, savedAt);
    });
  });

/** @throws Refusal `not-found` for a day that is not there, `conflict` for one that is closed */
function requireOpenToPlan(db: ReadableDb, dayId: number) {
  const day = dayById(db, dayId);
  if (day === undefined) throw new Refusal("not-found", sentence("day.none"));
  if (day.state === "closed") throw new Refusal("conflict", sentence("plan.closed"));
  return day;
}

/** @throws Refusal `bad-input` that says which part can't be */
function requireSensible({ begins, leagues, stations, breaks }: PlanSettings): void {
  const isBackwards = ({ from, until }: { readonly from: string; readonly until: string }) =>
    secondsAfter(begins, until) < secondsAfter(begins, from);
  const late = leagues.find(isBackwards);
  if (late !== undefined) {
    throw new Refusal("bad-input", sentence("plan.arrivesBackwards", { league: late.league }));
  }
  if (breaks.some((each) => isBackwards(each) || each.from === each.until)) {
    throw new Refusal("bad-input", sentence("plan.breakBackwards"));
  }
  const twice = leagues.find(
    ({ league }, index) => leagues.findIndex((each) => each.league === league) < index,
  );
  if (twice !== undefined)
    throw new Refusal("bad-input", sentence("plan.leagueTwice", { league: twice.league }));
  const double = testCodes.find((test) => stations.filter((station) => station.test === test).length > 1);
  if (double !== undefined) throw new Refusal("bad-input", sentence("plan.stationTwice", { test: double }));
}
