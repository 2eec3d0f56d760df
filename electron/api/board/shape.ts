import { isDone } from "../../domain/queue/queue.ts";
import { type TypicalError, typicalError, verdict } from "../../domain/statistics/change.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { InPublic } from "../../store/reads/present.ts";
import type { Call } from "../../store/tables/calls.ts";
import type { MarkWithNews } from "../marks/marks.ts";
import type { TypicalErrors } from "../noise/errors.ts";
import { writeGain } from "./gain.ts";
import type { Best, Board, BoardRow, Label } from "./schemas.ts";

/** The input of the big screen. */
export interface BoardFacts {
  readonly people: readonly InPublic[];
  readonly marks: readonly MarkWithNews[];
  readonly calls: readonly Call[];
  /** The typical errors that judge the gains. */
  readonly errors: TypicalErrors;
  readonly lengths: LengthUnit;
}

/** A complete mark without a loss, of an athlete who agreed to be shown. */
interface Shown {
  readonly seq: number;
  readonly label: Label;
  readonly test: TestCode;
  readonly value: number;
  readonly standing: BoardRow["standing"];
  /** In grains; 0 for a first mark. */
  readonly gain: number;
  readonly bestBefore: number;
}

const newestShown = 12;

/** Shapes the part of a day that the hall may see. Data without consent never leaves this function. */
export function shapeBoard(facts: BoardFacts): Omit<Board, "day" | "demo" | "hidden"> {
  const { people, calls, errors, lengths } = facts;
  const labels = labelsOf(people);
  // No hidden athlete's mark goes further, so that nothing shown can reveal one.
  const marks = facts.marks.filter(({ athleteId }) => labels.has(athleteId));
  const shown = showable(labels, marks);
  const bests = shown.filter(({ standing }) => standing === "best").sort((a, b) => b.seq - a.seq);
  return {
    newest: bests.slice(0, newestShown).map((mark) => bestOf(mark, errors[mark.test], lengths)),
    walls: testCodes.map((test) => ({ test, rows: wallOf(test, shown, lengths) })),
    calls: callsOf(people, calls),
    totals: totalsOf(marks),
  };
}

/** Returns the derby name, the bib alone, or nothing at all. */
function labelOf({ board, name, bib }: InPublic): Label | null {
  if (board === "name") return { as: "name", name };
  return board === "bib" && bib !== null ? { as: "bib", bib } : null;
}

/** Returns the labels of everybody who may be shown. */
function labelsOf(people: readonly InPublic[]): ReadonlyMap<number, Label> {
  return new Map(
    people.flatMap((person) => {
      const label = labelOf(person);
      return label === null ? [] : [[person.athleteId, label] as const];
    }),
  );
}

function showable(labels: ReadonlyMap<number, Label>, marks: readonly MarkWithNews[]): Shown[] {
  return marks.flatMap(({ athleteId, test, seq, mark, news }) => {
    const label = labels.get(athleteId);
    if (label === undefined || news === null || mark.state !== "complete" || news.standing === "below")
      return [];
    const { value } = mark;
    const { standing, gainOverBest, bestBefore } = news;
    return { seq, label, test, value, standing, gain: gainOverBest ?? 0, bestBefore: bestBefore ?? value };
  });
}

function bestOf(mark: Shown, error: TypicalError, lengths: LengthUnit): Best {
  const { seq, label, test, value, gain, bestBefore } = mark;
  const spread = Math.SQRT2 * typicalError(test, (bestBefore + value) / 2, error);
  const judged = verdict(test, bestBefore, value, error);
  if (judged === "likely loss" || judged === "clear loss") throw new Error("A best is never a loss.");
  return {
    ...{ seq, label, test, verdict: judged },
    written: protocolOf(test).write(value, lengths),
    gain: writeGain(test, gain, lengths),
    spreads: Math.round((100 * gain) / spread) / 100,
  };
}

const order: Readonly<Record<BoardRow["standing"], number>> = { best: 0, equal: 1, first: 2 };

/** Sorts one test's marks by gain, earliest first among equals; marks are never ranked. */
function wallOf(test: TestCode, shown: readonly Shown[], lengths: LengthUnit): BoardRow[] {
  return shown
    .filter((mark) => mark.test === test)
    .sort((a, b) => order[a.standing] - order[b.standing] || gainOfBest(b) - gainOfBest(a) || a.seq - b.seq)
    .map(({ seq, label, value, standing, gain }) => ({
      ...{ seq, label, standing },
      written: protocolOf(test).write(value, lengths),
      gain: standing === "best" ? writeGain(test, gain, lengths) : null,
    }));
}

/** Returns the gain of a best. An equal mark may lie a grain above or below the own best, which no reading shows. */
function gainOfBest({ standing, gain }: Shown): number {
  return standing === "best" ? gain : 0;
}

/**
 * Returns the calls. A call needs its bib, so every athlete who agreed to be shown has theirs; the name needs consent.
 */
function callsOf(people: readonly InPublic[], calls: readonly Call[]): Board["calls"] {
  const byId = new Map(people.map((person) => [person.athleteId, person]));
  return testCodes.flatMap((test) => {
    const called = calls
      .filter((call) => call.test === test)
      .flatMap(({ athleteId }) => {
        const person = byId.get(athleteId);
        if (person === undefined || person.board === "hidden" || person.bib === null) return [];
        return { bib: person.bib, name: person.board === "name" ? person.name : null };
      });
    return called.length === 0 ? [] : { test, called };
  });
}

function totalsOf(marks: readonly MarkWithNews[]): Board["totals"] {
  const done = marks.filter(({ mark }) => isDone(mark));
  return {
    bests: marks.filter(({ news }) => news?.standing === "best").length,
    testsDone: new Set(done.map(({ athleteId, test }) => `${athleteId} ${test}`)).size,
    athletesTested: new Set(done.map(({ athleteId }) => athleteId)).size,
  };
}
