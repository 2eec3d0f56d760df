import { z } from "zod";
import { joinedFacts } from "../../domain/people/joined.ts";
import { Refusal } from "../../domain/refusal.ts";
import { protocolOf } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { heldRows } from "../../store/erasure/held.ts";
import {
  joinRecords,
  type Pair,
  pastOfBoth,
  ranTogether,
  sharedDays,
  skipsOfBoth,
  testsOfBoth,
} from "../../store/steps/join.ts";
import { stepById } from "../../store/steps/steps.ts";
import { takeIdentityStep } from "../../store/steps/take-step.ts";
import { type Athlete, athleteById } from "../../store/tables/athletes.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { takenLanes } from "../../store/tables/heat-lanes.ts";
import { readingsOfBoth } from "../../store/tables/study-readings.ts";
import { initialsSchema } from "../door/said.ts";
import { allow } from "../door/trpc.ts";
import { requireAthlete } from "./person.ts";
import { forgetNames } from "./search.ts";

const pairInput = z.object({ keptId: z.int(), goneId: z.int() });

/** Returns two records, what one record of both would be, and what stands in the way or deserves a look. */
export const beforeJoining = allow("organiser")
  .input(pairInput)
  .query(({ ctx: { desk }, input }) => {
    const { db } = desk.store;
    const pair = pairOf(db, input);
    return {
      kept: recordOf(db, pair.kept),
      gone: recordOf(db, pair.gone),
      after: factsOf(joinedFacts(pair.kept, pair.gone)),
      blocked: whyNotJoined(db, pair),
      notes: notesOf(db, pair),
    };
  });

/** Makes two records one; the history keeps it, and it can be undone until something depends on it. */
export const join = allow("organiser")
  .input(pairInput.extend({ stepId: z.uuid(), by: initialsSchema }))
  .mutation(({ ctx: { desk }, input: { stepId, by, ...which } }) => {
    desk.store.write(["people", "entrants", "attempts", "calls", "heats"], (db) => {
      if (stepById(db, stepId) !== undefined) return;
      const pair = pairOf(db, which);
      const [why] = whyNotJoined(db, pair);
      if (why !== undefined) throw new Refusal("conflict", why);
      const { kept, gone } = pair;
      const step = {
        id: stepId,
        kind: "joined",
        at: desk.now().toISOString(),
        by,
        file: "",
        counts: {},
      } as const;
      const after = joinedFacts(kept, gone);
      takeIdentityStep(db, step, [kept.id, gone.id], () => joinRecords(db, pair, after), kept.id);
    });
    forgetNames(desk.store);
  });

function pairOf(db: ReadableDb, { keptId, goneId }: z.infer<typeof pairInput>): Pair {
  if (keptId === goneId) throw new Refusal("bad-input", sentence("join.same"));
  return { kept: requireAthlete(db, keptId), gone: requireAthlete(db, goneId) };
}

function factsOf(athlete: Athlete) {
  const { name, number, league, birthYear, category, guardianConsent, board, share } = athlete;
  return { name, number, league, birthYear, category, guardianConsent, board, share };
}

function recordOf(db: ReadableDb, athlete: Athlete) {
  const { entrant, attempt, past_mark } = heldRows(db, athlete.id);
  const counts = { days: entrant.length, attempts: attempt.length, pastMarks: past_mark.length };
  return { ...factsOf(athlete), ...counts };
}

/** All that stands in the way of making two records one. */
function whyNotJoined(db: ReadableDb, pair: Pair): Sentence[] {
  const { kept, gone } = pair;
  const names = { kept: kept.name, gone: gone.name };
  const why: Sentence[] = ranTogether(db, pair) ? [sentence("join.ranTogether", names)] : [];
  const day = dayAtHand(db);
  const taken = day === undefined ? [] : takenLanes(db, day.id);
  const lane = taken.find(({ athleteId }) => athleteId === kept.id || athleteId === gone.id);
  if (lane !== undefined) {
    const name = athleteById(db, lane.athleteId)?.name ?? "";
    why.push(sentence(`test.${lane.test}.inHeat`, { name, lane: lane.lane }));
  }
  for (const { test, date } of testsOfBoth(db, pair)) why.push(sentence("join.sameTest", { test, date }));
  for (const { test, date } of skipsOfBoth(db, pair)) why.push(sentence("join.bothSkip", { test, date }));
  for (const { test, date, ...values } of pastOfBoth(db, pair)) {
    if (values.kept === values.gone) continue;
    const written = (value: number) => protocolOf(test).write(value, "cm").number;
    const both = { first: written(values.kept), second: written(values.gone) };
    why.push(sentence("join.samePast", { test, date, ...both }));
  }
  for (const { test } of readingsOfBoth(db, kept.id, gone.id)) why.push(sentence("join.bothRead", { test }));
  return why;
}

/** What deserves a look before two records become one. */
function notesOf(db: ReadableDb, pair: Pair): Sentence[] {
  const { kept, gone } = pair;
  const notes: Sentence[] = [];
  if (kept.birthYear !== null && gone.birthYear !== null && kept.birthYear !== gone.birthYear) {
    notes.push(sentence("join.otherYear", { first: kept.birthYear, second: gone.birthYear }));
  }
  for (const { date, keptBib, goneBib } of sharedDays(db, pair)) {
    if (keptBib === null || goneBib === null) notes.push(sentence("join.bothListed", { date }));
    else notes.push(sentence("join.bothBibs", { date, stays: keptBib, goes: goneBib }));
  }
  const equal = pastOfBoth(db, pair).filter((past) => past.kept === past.gone);
  for (const { test, date } of equal) notes.push(sentence("join.equalPast", { test, date }));
  return notes;
}
