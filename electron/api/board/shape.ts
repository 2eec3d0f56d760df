import { isDone } from "../../domain/queue/queue.ts";
import { type Change, changeBetween, spreadsOf, verdictOn } from "../../domain/statistics/change.ts";
import type { Variation, Variations } from "../../domain/statistics/variation.ts";
import { bestsByChance } from "../../domain/summary/counts.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { InPublic } from "../../store/reads/present.ts";
import type { Call } from "../../store/tables/calls.ts";
import type { HeatAtHand } from "../lanes/at-hand.ts";
import type { MarkWithNews } from "../marks/marks.ts";
import { placeOfMark } from "../marks/unanswered.ts";
import type { Best, Board, BoardRow, First, Gain, Label } from "./schemas.ts";

/** The input of the big screen. */
export interface BoardFacts {
  readonly people: readonly InPublic[];
  readonly marks: readonly MarkWithNews[];
  readonly calls: readonly Call[];
  readonly heats: readonly HeatAtHand[];
  /** Marks that wait for an answer to a doubt, by `placeOfMark`: they are not news yet. */
  readonly doubted: ReadonlySet<string>;
  /** How marks vary, which judges the gains. */
  readonly variations: Variations;
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
  /** What knowing the test adds to a change, better above zero, and its standard error; in grains. */
  readonly learnt: number;
  readonly learntError: number;
  readonly isFair: boolean;
}

const newestShown = 12;

/** Shapes the part of a day that the hall may see. Data without consent never leaves this function. */
export function shapeBoard(facts: BoardFacts): Omit<Board, "day" | "demo" | "hidden"> {
  const { people, calls, heats, doubted, variations, lengths } = facts;
  const labels = labelsOf(people);
  // No hidden athlete's mark goes further, so that nothing shown can reveal one.
  const marks = facts.marks.filter(({ athleteId }) => labels.has(athleteId));
  const sure = marks.filter((mark) => !doubted.has(placeOfMark(mark)));
  const shown = showable(labels, sure);
  const newestOf = (which: BoardRow["standing"]) =>
    shown
      .filter(({ standing }) => standing === which)
      .sort((a, b) => b.seq - a.seq)
      .slice(0, newestShown);
  return {
    newest: newestOf("best").map((mark) => bestOf(mark, variations[mark.test], lengths)),
    firsts: newestOf("first").map((mark) => firstOf(mark, lengths)),
    walls: testCodes.map((test) => ({ test, rows: wallOf(test, shown, lengths), part: 1, parts: 1 })),
    calls: callsOf(people, calls),
    heats: runningOf(people, heats),
    totals: { ...newsIn(sure), ...doneIn(marks) },
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
  return marks.flatMap(({ athleteId, test, seq, mark, news, isFairBest }) => {
    const label = labels.get(athleteId);
    if (label === undefined || news === null || mark.state !== "complete" || news.standing === "below")
      return [];
    const { value } = mark;
    const { standing, gainOverBest, bestBefore, learnt, learntError } = news;
    const best = {
      ...{ gain: gainOverBest ?? 0, bestBefore: bestBefore ?? value, isFair: isFairBest },
      ...{ learnt: learnt ?? 0, learntError: learntError ?? 0 },
    };
    return { seq, label, test, value, standing, ...best };
  });
}

function bestOf(mark: Shown, variation: Variation, lengths: LengthUnit): Best {
  const { seq, label, test, value, gain, isFair } = mark;
  const change = overBest(mark, variation);
  // A best over fewer trials is one, but how much of it is chance nobody knows.
  const judged = isFair ? verdictOn(change) : "noise";
  return {
    ...{ seq, label, test, verdict: judged === "clear gain" || judged === "likely gain" ? judged : "noise" },
    written: protocolOf(test).write(value, lengths),
    gain: writeGain(test, gain, lengths),
    spreads: Math.round(100 * Math.max(0, spreadsOf(change))) / 100,
  };
}

/** Returns a best's gain over the best before, less what knowing the test adds: a small one may then be less than none. */
function overBest(
  { test, value, bestBefore, learnt, learntError }: Shown,
  { error, hall }: Variation,
): Change {
  const change = changeBetween(test, bestBefore, value, error, hall.variance);
  return { ...change, gain: change.gain - learnt, spread: Math.hypot(change.spread, learntError) };
}

function firstOf({ seq, label, test, value }: Shown, lengths: LengthUnit): First {
  return { seq, label, test, written: protocolOf(test).write(value, lengths) };
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

/** Returns the calls. A call needs its bib: all who agreed to be shown have theirs, and the name needs consent. */
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

/** Returns each test's running heats by the bibs of those who agreed to be shown. A heat without any is left out. */
function runningOf(people: readonly InPublic[], heats: readonly HeatAtHand[]): Board["heats"] {
  const bibs = new Map(
    people.map(({ athleteId, board, bib }) => [athleteId, board === "hidden" ? null : bib]),
  );
  const running = heats
    .filter(({ state }) => state === "running")
    .map(({ test, athleteIds }) => ({ test, bibs: athleteIds.flatMap((id) => bibs.get(id) ?? []) }))
    .filter((heat) => heat.bibs.length > 0);
  return testCodes.flatMap((test) => {
    const own = running.filter((heat) => heat.test === test).map((heat) => heat.bibs);
    return own.length === 0 ? [] : { test, heats: own };
  });
}

function newsIn(marks: readonly MarkWithNews[]): Pick<Board["totals"], "bests" | "firsts" | "bestsByChance"> {
  const news = marks.flatMap((mark) => mark.news ?? []);
  const count = (which: BoardRow["standing"]) => news.filter(({ standing }) => standing === which).length;
  const byChance = Math.round(bestsByChance(news));
  return { bests: count("best"), firsts: count("first"), bestsByChance: byChance };
}

/** What was done counts as done, also while a doubt about the number is open. */
function doneIn(marks: readonly MarkWithNews[]): Pick<Board["totals"], "testsDone" | "athletesTested"> {
  const done = marks.filter(({ mark }) => isDone(mark));
  return {
    testsDone: new Set(done.map(({ athleteId, test }) => `${athleteId} ${test}`)).size,
    athletesTested: new Set(done.map(({ athleteId }) => athleteId)).size,
  };
}

/** Formats a gain (grains, above zero) for people: in the test's unit, and below a minute in plain seconds. */
function writeGain(test: TestCode, gain: number, lengths: LengthUnit): Gain {
  const { grain, write } = protocolOf(test);
  if (grain.unit === "s" && gain < 60 * grain.perUnit) {
    return { number: String(gain / grain.perUnit), unit: "s" };
  }
  const { number, unit } = write(gain, lengths);
  // Every complete mark has a unit; only an incomplete one is formatted without.
  if (unit === "") throw new Error(`A gain in ${test} was written without a unit.`);
  return { number, unit };
}
