import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { slotTaken } from "../../domain/tests/slots.ts";
import { againstLast } from "../../domain/tests/written.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ResultRow } from "../../sheets/results.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import type { EntrantState } from "../../store/tables/entrants.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { lastClock } from "../door/calendar.ts";
import { contentOf, freshAttemptId } from "./attempt-id.ts";
import { athleteOfRow } from "./by-bib.ts";
import {
  isTaken,
  keptBack,
  known,
  type Planned,
  type Planning,
  type ReadRow,
  type RowOutcome,
} from "./outcome.ts";
import { type Finder, finderIn } from "./register.ts";
import { type Hall, readHall, seenOf, takeSlot } from "./results-hall.ts";
import { createResultsTaking, type ResultsTaking } from "./results-taking.ts";

interface Plan {
  readonly hall: Hall;
  readonly find: Finder;
  readonly at: string;
  /** Counts of equal content in this sheet so far. */
  readonly occurrences: Map<string, number>;
  /** The newest row of each mark that the sheet changes, by `athlete test variant`. */
  readonly touched: Map<string, TouchedMark>;
  readonly taking: ResultsTaking;
}

interface TouchedMark {
  readonly index: number;
  /** The newest of the sheet's new attempts behind it, from 0. */
  readonly newest: number;
  readonly athleteId: number;
  readonly test: TestCode;
  readonly variant: string;
}

/** Rows, or marks, that are planned in one turn. */
const turn = 100;

/** Plans the import of results. @throws Refusal `unavailable` when no day is open. */
export function* planResults(
  db: ReadableDb,
  rows: readonly ReadRow<ResultRow>[],
  { at, answers }: Planning,
): Generator<undefined, Planned> {
  const hall = readHall(db, requireOpenDay(db));
  yield;
  const find = finderIn(hall.register, answers);
  const taking = createResultsTaking(hall);
  const plan: Plan = { hall, find, at, occurrences: new Map(), touched: new Map(), taking };
  const outcomes: RowOutcome[] = [];
  for (const [index, each] of rows.entries()) {
    outcomes.push(outcomeOf(plan, each, index));
    if (index % turn === turn - 1) yield;
  }
  yield* scoreMarks(plan, outcomes);
  return { outcomes, taking: taking.done(db) };
}

function outcomeOf(plan: Plan, each: ReadRow<ResultRow>, index: number): RowOutcome {
  try {
    return planRow(plan, each, index);
  } catch (error) {
    if (error instanceof RowRefused) return keptBack(each.line, error);
    throw error;
  }
}

function planRow(plan: Plan, { line, row }: ReadRow<ResultRow>, index: number): RowOutcome {
  const { hall } = plan;
  const { test, variant, seen, enteredBy, note } = row;
  const performed = performedAt(row.doneAt, plan.at);
  const athlete = athleteOfRow(hall, plan.find, row.who, unknownBib);
  const { id: athleteId } = athlete;
  plan.taking.concerns(athleteId);
  refuseAbsent(hall, athlete);
  const content = contentOf({ dayId: hall.day.id, athleteId, test, variant, seen });
  const occurrence = (plan.occurrences.get(content) ?? 0) + 1;
  plan.occurrences.set(content, occurrence);
  const id = freshAttemptId(content, occurrence, hall.undone);
  if (hall.ids.has(id)) return known(line, athlete);
  const opinion = protocolOf(test).plausibility(hall.parameters[test], seen);
  if (opinion.level === "refuse") throw new RowRefused(null, opinion.sentence);
  const slot = takePlace(hall, athleteId, row);
  const attempt = { id, athleteId, test, variant, slot, enteredBy, note, performed };
  const newest = plan.taking.add({ ...attempt, seen: JSON.stringify(seen) });
  plan.touched.set(`${athleteId} ${test} ${variant}`, { index, newest, athleteId, test, variant });
  const asked = opinion.level === "ask" ? opinion.sentence : null;
  const unusual = asked ?? partLeft(hall, athlete, test);
  return { line, status: "new", about: athlete, unusual, was: {}, joins: false };
}

/** @throws RowRefused for a time of day at which nothing can have been done */
function performedAt(doneAt: string | null, now: string): string | null {
  if (doneAt === null) return null;
  const performed = lastClock(doneAt, now);
  if (performed === null) throw new RowRefused("done_at", sentence("sheets.row.notSince"));
  return performed;
}

function unknownBib(bib: number): Sentence {
  return sentence("sheets.row.unknownBib", { bib });
}

function refuseAbsent(hall: Hall, { id, name }: Athlete): void {
  const state = hall.entrants.get(id)?.state ?? "unlisted";
  if (state !== "testing" && state !== "withdrawn") throw new RowRefused(null, absence(state, name));
}

function absence(state: Exclude<EntrantState, "testing" | "withdrawn"> | "unlisted", name: string): Sentence {
  switch (state) {
    case "unlisted":
      return sentence("sheets.row.notListed", { name });
    case "expected":
      return sentence("sheets.row.notCheckedIn", { name });
    case "not-testing":
      return sentence("sheets.row.notTesting", { name });
    case "no-show":
      return sentence("sheets.row.noShow", { name });
  }
}

/** Takes a slot by the same rule as recording an attempt; returns which. @throws RowRefused where there is no room. */
function takePlace(hall: Hall, athleteId: number, { test, variant, seen, enteredBy }: ResultRow): string {
  const standing = hall.standing(athleteId, test, variant);
  const slot = protocolOf(test).slot(seen);
  const taken = slotTaken(test, hall.parameters[test], standing.slots.get(slot));
  if (taken !== null) throw new RowRefused(null, taken);
  takeSlot(standing, slot, enteredBy);
  standing.seen.push(seen);
  return slot;
}

/** Returns a warning if an athlete withdrew or skips this test: paper results count, but deserve a second look. */
function partLeft(hall: Hall, { id, name }: Athlete, test: TestCode): Sentence | null {
  if (hall.entrants.get(id)?.state === "withdrawn") return sentence("sheets.row.withdrawn", { name });
  return hall.leftOut.has(`${id} ${test}`) ? sentence("sheets.row.leavesOut", { name }) : null;
}

/** Scores each mark that the sheet changes, once all of its rows are there, and questions those far from the last one. */
function* scoreMarks({ hall, touched, taking }: Plan, outcomes: RowOutcome[]): Generator<undefined> {
  let done = 0;
  for (const { index, newest, athleteId, test, variant } of touched.values()) {
    const seen = seenOf(test, hall.standing(athleteId, test, variant));
    const mark = protocolOf(test).score(hall.parameters[test], seen);
    const fingerprint = hall.fingerprintOf(test, variant);
    taking.addMark({ athleteId, test, variant, fingerprint, mark, newest });
    const last = hall.last(athleteId, fingerprint);
    const outcome = outcomes[index];
    if (last !== undefined && outcome !== undefined && isTaken(outcome) && mark.state === "complete") {
      const opinion = againstLast(test, last, mark.value, "cm", hall.errors[test]);
      const unusual = outcome.unusual ?? (opinion.level === "ask" ? opinion.sentence : null);
      outcomes[index] = { ...outcome, unusual };
    }
    done += 1;
    if (done % turn === 0) yield;
  }
}
