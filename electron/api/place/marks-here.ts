import { consentOf } from "../../domain/privacy/consent.ts";
import { type AgeBand, bandOfAges } from "../../domain/privacy/quasi.ts";
import { inOrder, type MarksInOrder, together } from "../../domain/statistics/marks-in-order.ts";
import { withinEnds } from "../../domain/statistics/place-ends.ts";
import { definitionOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athletes, athletesOf } from "../../store/reads/athletes-kept.ts";
import {
  type ComparableMark,
  type Latest,
  latestMarks,
  marksToCompare,
} from "../../store/reads/comparable-marks.ts";
import type { Athlete, Category } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";

/** The marks that compare: of one fingerprint, and of athletes in one category. */
export interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}

/** Marks of this store to compare with, one per athlete who agreed. */
export interface MarksHere {
  /** Returns those of everybody but one athlete, of an age band that begins so (null: of all ages). */
  others(athleteId: Athlete["id"], from: number | null): MarksInOrder;
}

/** Returns the marks of a day, and each athlete's latest mark up to it. */
export function marksHere(db: ReadableDb, day: Day, sort: Sort): { today: MarksHere; store: MarksHere } {
  const { test, fingerprint } = sort;
  const athletes = athletesOf(db);
  const agreed = (marks: readonly ComparableMark[]) => agreedOf(marks, athletes, sort, day.date);
  const latest = latestMarks(db, day, { test, fingerprint });
  const elsewhere = agreedElsewhere(latest.elsewhere, athletes, sort, day.date);
  return {
    today: hereOf(nobody, agreed(marksToCompare(db, day.id, test, fingerprint))),
    store: hereOf(elsewhere, agreed(latest.today)),
  };
}

interface AgedMark extends ComparableMark {
  readonly ages: AgeBand | null;
}

/** Marks of some athletes, in order once they are asked for. */
interface Group {
  readonly marks: ReadonlyMap<Athlete["id"], AgedMark>;
  /** Those of an age band that begins so; null: of all ages. */
  of(from: number | null): MarksInOrder;
}

function groupOf(marks: readonly AgedMark[]): Group {
  const orders = new Map<number | null, MarksInOrder>();
  return {
    marks: new Map(marks.map((mark) => [mark.athleteId, mark])),
    of(from) {
      const some = () => marks.flatMap((mark) => (isOf(mark, from) ? mark.value : []));
      const order = orders.get(from) ?? inOrder(some());
      orders.set(from, order);
      return order;
    },
  };
}

const isOf = ({ ages }: AgedMark, from: number | null) => from === null || ages?.from === from;

const nobody = groupOf([]);

/**
 * Returns the marks of those who agreed that they count, as far as their test tells. Without athletes of another category,
 * and those who have not agreed to share (or whose guardian has not, where needed).
 */
function agreedOf(
  marks: Iterable<ComparableMark>,
  athletes: Athletes,
  { test, category }: Sort,
  date: string,
): Group {
  const { ends } = definitionOf(test).figures;
  const found: AgedMark[] = [];
  for (const { athleteId, value } of marks) {
    const athlete = athletes.get(athleteId);
    if (athlete?.category !== category || consentOf(athlete, date) !== "given") continue;
    found.push({ athleteId, value: withinEnds(value, ends), ages: bandOfAges(athlete.birthYear, date) });
  }
  return groupOf(found);
}

/** By what they were made of; both are the same object until something of them changes. */
const kept = new WeakMap<
  Latest,
  Map<Category | null, { readonly athletes: Athletes; readonly group: Group }>
>();

/** Returns the same of other days' marks: put in order once, and not at each entry of a day. */
function agreedElsewhere(latest: Latest, athletes: Athletes, sort: Sort, date: string): Group {
  const known = kept.get(latest) ?? new Map();
  kept.set(latest, known);
  const there = known.get(sort.category);
  if (there?.athletes === athletes) return there.group;
  const group = agreedOf(latest.values(), athletes, sort, date);
  known.set(sort.category, { athletes, group });
  return group;
}

/** Marks of other days, but of those who have one of today. */
function hereOf(elsewhere: Group, today: Group): MarksHere {
  const { marks } = elsewhere;
  const replaced = groupOf([...today.marks.keys()].flatMap((id) => marks.get(id) ?? []));
  return {
    others(athleteId, from) {
      const own = today.marks.get(athleteId) ?? marks.get(athleteId);
      const apart = own !== undefined && isOf(own, from) ? [inOrder([own.value])] : [];
      return together([elsewhere.of(from), today.of(from)], [replaced.of(from), ...apart]);
    },
  };
}
