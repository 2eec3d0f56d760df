import { RowRefused } from "../../domain/tests/cells.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { slotTaken } from "../../domain/tests/slots.ts";
import { againstLast } from "../../domain/tests/written.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ResultRow } from "../../sheets/results.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import type { EntrantState } from "../../store/tables/entrants.ts";
import { recordAttempt } from "../../store/tables/record.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { lastClock } from "../door/calendar.ts";
import { contentOf, freshAttemptId } from "./attempt-id.ts";
import { athleteOfRow } from "./by-bib.ts";
import { isTaken, keptBack, known, type Planning, type ReadRow, type RowOutcome } from "./outcome.ts";
import { type Finder, finderIn } from "./register.ts";
import { addTo, type Hall, readHall } from "./results-hall.ts";

interface Plan {
  readonly hall: Hall;
  readonly find: Finder;
  readonly at: string;
  /** Counts of equal content in this sheet so far. */
  readonly occurrences: Map<string, number>;
  /** The newest row of each mark that the sheet changes, by `athlete test variant`. */
  readonly touched: Map<string, { index: number; athleteId: number; test: TestCode; variant: string }>;
}

/** Plans the import of results. @throws Refusal `unavailable` when no day is open. */
export function planResults(
  db: ReadableDb,
  rows: readonly ReadRow<ResultRow>[],
  { at, answers }: Planning,
): RowOutcome[] {
  const hall = readHall(db, requireOpenDay(db));
  const find = finderIn(hall.register, answers);
  const plan: Plan = { hall, find, at, occurrences: new Map(), touched: new Map() };
  const outcomes = rows.map((each, index): RowOutcome => {
    try {
      return planRow(plan, each, index);
    } catch (error) {
      if (error instanceof RowRefused) return keptBack(each.line, error);
      throw error;
    }
  });
  compareWithLast(plan, outcomes);
  return outcomes;
}

function planRow(plan: Plan, { line, row }: ReadRow<ResultRow>, index: number): RowOutcome {
  const { hall } = plan;
  const { test, variant, seen, enteredBy, note } = row;
  const performed = performedAt(row.doneAt, plan.at);
  const athlete = athleteOfRow(hall, plan.find, row.who, unknownBib);
  refuseAbsent(hall, athlete);
  const attempt = { dayId: hall.day.id, athleteId: athlete.id, test, variant, seen };
  const content = contentOf(attempt);
  const occurrence = (plan.occurrences.get(content) ?? 0) + 1;
  plan.occurrences.set(content, occurrence);
  const id = freshAttemptId(attempt, occurrence, hall.undone);
  if (hall.ids.has(id)) return known(line, athlete);
  const opinion = protocolOf(test).plausibility(hall.parameters[test], seen);
  if (opinion.level === "refuse") throw new RowRefused(null, opinion.sentence);
  takePlace(hall, athlete.id, row);
  plan.touched.set(`${athlete.id} ${test} ${variant}`, { index, athleteId: athlete.id, test, variant });
  const asked = opinion.level === "ask" ? opinion.sentence : null;
  const unusual = asked ?? partLeft(hall, athlete, test);
  const entry = { id, athleteId: athlete.id, test, variant, seen, enteredBy, note, performed, at: plan.at };
  function apply(db: WritableDb): void {
    recordAttempt(db, hall.day.id, { ...entry, source: "sheet", replaces: null });
  }
  return { line, status: "new", about: athlete, unusual, was: {}, joins: false, apply };
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

/** Takes a slot by the same rule as recording an attempt, so that a preview shows what will happen. */
function takePlace(hall: Hall, athleteId: number, { test, variant, seen, enteredBy }: ResultRow): void {
  const standing = hall.standing(athleteId, test, variant);
  const slot = protocolOf(test).slot(seen);
  const taken = slotTaken(test, hall.parameters[test], standing.slots.get(slot));
  if (taken !== null) throw new RowRefused(null, taken);
  addTo(standing, slot, seen, enteredBy);
}

/** Returns a warning if an athlete withdrew or skips this test: paper results count, but deserve a second look. */
function partLeft(hall: Hall, { id, name }: Athlete, test: TestCode): Sentence | null {
  if (hall.entrants.get(id)?.state === "withdrawn") return sentence("sheets.row.withdrawn", { name });
  return hall.leftOut.has(`${id} ${test}`) ? sentence("sheets.row.leavesOut", { name }) : null;
}

/** Questions marks far from the athlete's own last, once all rows of the mark are there. */
function compareWithLast({ hall, touched }: Plan, outcomes: RowOutcome[]): void {
  for (const { index, athleteId, test, variant } of touched.values()) {
    const last = hall.last(athleteId, test, variant);
    const outcome = outcomes[index];
    if (last === undefined || outcome === undefined || !isTaken(outcome) || outcome.unusual !== null)
      continue;
    const mark = protocolOf(test).score(hall.parameters[test], hall.standing(athleteId, test, variant).seen);
    if (mark.state !== "complete") continue;
    const opinion = againstLast(test, last, mark.value, "cm", hall.errors[test]);
    if (opinion.level === "ask") outcomes[index] = { ...outcome, unusual: opinion.sentence };
  }
}
