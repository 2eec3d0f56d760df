import { type Made, madeOn } from "../../domain/marks/made.ts";
import type { TimedAttempt } from "../../domain/queue/times.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import {
  type AttemptOfSheet,
  type MarkOfSheet,
  recordSheet,
  writeAttempt,
  writeMark,
} from "../../store/tables/record-sheet.ts";
import type { Taking } from "./outcome.ts";
import { areFactsNow } from "./results-facts.ts";
import type { Hall } from "./results-hall.ts";

/** Gathers what a sheet of results adds, as text for the store, so that nothing is worked out in the transaction. */
export interface ResultsTaking {
  /** Notes that a row is about somebody: the plan depends on their attempts. */
  concerns(athleteId: number): void;
  /** Adds a new attempt; returns its place among the sheet's new ones, from 0. */
  add(attempt: AttemptOfSheet): number;
  /** Adds a mark, after all of its attempts. */
  addMark(mark: Omit<MarkOfSheet, keyof Made>): void;
  done(db: ReadableDb): Taking;
}

const unknown: Made = { position: null, restMinutes: null };

export function createResultsTaking({ day, facts, times }: Hall): ResultsTaking {
  const [attempts, marks]: [string[], string[]] = [[], []];
  const inSheet = new Set<number>();
  const added = new Map<number, TimedAttempt[]>();
  const made = new Map<number, ReadonlyMap<TestCode, Made>>();
  return {
    concerns(athleteId) {
      inSheet.add(athleteId);
    },
    add(attempt) {
      const { id, athleteId, test, performed } = attempt;
      const own = added.get(athleteId) ?? [];
      own.push({ id, athleteId, test, at: "", performed, replaces: null, stands: true });
      added.set(athleteId, own);
      return attempts.push(writeAttempt(attempt)) - 1;
    },
    addMark(mark) {
      const { athleteId, test } = mark;
      const how = made.get(athleteId) ?? madeOn(added.get(athleteId) ?? []);
      made.set(athleteId, how);
      // Of those who had attempts before, all marks are looked at again by the store.
      const { position, restMinutes } = times.has(athleteId) ? unknown : (how.get(test) ?? unknown);
      marks.push(writeMark({ ...mark, position, restMinutes }));
    },
    done: (db) => ({
      holds: (now) => now === db && areFactsNow(now, facts, inSheet),
      // Only attempts come, and marks, which follow from them.
      touches: [],
      write(inside, at) {
        const known = [...added.keys()].filter((athleteId) => times.has(athleteId));
        recordSheet(inside, { dayId: day.id, at, attempts, marks, known });
      },
    }),
  };
}
