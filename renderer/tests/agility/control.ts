import { type AgilityLane, reactionMs, trialCountInMs } from "../../../electron/domain/tests/agility/live.ts";
import type { Direction } from "../../../electron/domain/tests/agility/protocol.ts";
import { judge } from "../../../electron/domain/tests/judge.ts";
import { createCell } from "../../app/cell.ts";
import { bind, keysBetweenLanes } from "../live/bind.ts";
import { chooseLane, forgetLane, laneAtHand } from "../live/chosenLane.ts";
import type { LiveKeys } from "../live/liveKeys.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import {
  addTouch,
  type Count,
  type Counting,
  countingOf,
  countOf,
  goBack,
  goOn,
  goTo,
  isLast,
  stepBy,
  typeDigit,
} from "./counting.ts";

/** The actions of the quadrant jump, by key or by finger. */
type AgilityLive = Live<"agility">;
type Lane = LiveLane<"agility">;

/** Counts begun and not saved, by trial. */
const counts = createCell<ReadonlyMap<string, Counting>>(new Map());
/** The trial to be run again, while its reason is asked. */
export const rerunning = createCell<{ readonly lane: number; readonly direction: Direction } | null>(null);

function nameOfTrial(live: AgilityLive, { lane, state }: Lane): string {
  return `${live.heat.heatId}.${lane}.${state.trial?.fromMs}`;
}

/** Returns the count so far of a lane's current trial; null without one. */
function countingAt(live: AgilityLive, lane: Lane): Counting | null {
  const { trial } = lane.state;
  return trial === null ? null : (counts.get().get(nameOfTrial(live, lane)) ?? countingOf(trial));
}

export function useCounting(live: AgilityLive, lane: Lane): Counting | null {
  counts.use();
  return countingAt(live, lane);
}

/** Starts the count-in of a lane's next trial; the start signal comes after it. */
export function go(live: AgilityLive, lane: Lane, timeStamp: number): void {
  const { next, trial } = lane.state;
  if (next === null || trial !== null) return;
  const atMs = live.clock.elapsedAt(timeStamp) + trialCountInMs;
  chooseLane(live, lane);
  live.tap({ lane: lane.lane, kind: "go", detail: { direction: next }, atMs });
}

/** Voids the current trial. During its count-in it is lost at its signal, since it can't come earlier. */
export function falseStart(live: AgilityLive, { lane, state }: Lane, timeStamp: number): void {
  if (state.trial === null) return;
  const atMs = Math.max(live.clock.elapsedAt(timeStamp), state.trial.fromMs);
  live.tap({ lane, kind: "false-start", atMs });
}

/** Starts all lanes that wait for their next trial together, on one signal. */
export function goAll(live: AgilityLive, timeStamp: number): void {
  const atMs = live.clock.elapsedAt(timeStamp) + trialCountInMs;
  for (const { lane, state } of waiting(live)) {
    live.tap({ lane, kind: "go", detail: { direction: state.next }, atMs });
  }
}

/** Returns the lanes that could start a trial now. */
export function waiting(live: AgilityLive): readonly Lane[] {
  return live.lanes.filter(({ state }) => state.trial === null && state.next !== null && isOpen(state));
}

function isOpen({ phase }: AgilityLane): boolean {
  return phase === "ready" || phase === "going";
}

export function change(live: AgilityLive, lane: Lane, by: (counting: Counting) => Counting): void {
  const counting = countingAt(live, lane);
  if (counting === null) return;
  counts.set(new Map(counts.get()).set(nameOfTrial(live, lane), by(counting)));
}

/**
 * Answers the current question with a digit under a finger. It never saves: a finger may still be at what stood in its
 * place before.
 */
export function press(live: AgilityLive, lane: Lane, digit: number): void {
  if (countingAt(live, lane)?.asked === true) return;
  change(live, lane, (counting) => typeDigit(counting, digit));
}

/** Taps a line touch; after the whistle it is added to a count that was begun, too. */
export function touch(live: AgilityLive, lane: Lane, timeStamp: number): void {
  live.tap({ lane: lane.lane, kind: "touch", timeStamp });
  if (counts.get().has(nameOfTrial(live, lane))) change(live, lane, addTouch);
}

/** Answers the current question with a key's digit; the last answer saves the trial. */
function answer(live: AgilityLive, lane: Lane, digit: number, timeStamp: number): void {
  const wasLast = isLast(countingAt(live, lane)?.at ?? "laps");
  change(live, lane, (counting) => typeDigit(counting, digit));
  if (wasLast) save(live, lane, timeStamp);
}

/** Goes on to the next question, or saves. */
export function next(live: AgilityLive, lane: Lane, timeStamp: number): void {
  const wasLast = isLast(countingAt(live, lane)?.at ?? "laps");
  change(live, lane, goOn);
  if (wasLast) save(live, lane, timeStamp);
}

/** Answers with yes that a doubtful count is right. */
export function agree(live: AgilityLive, lane: Lane, timeStamp: number): void {
  if (countingAt(live, lane)?.asked === true) save(live, lane, timeStamp, true);
}

/** True if a count may be entered now; a doubtful one is asked about first, and what can't be is not entered at all. */
function isSure(live: AgilityLive, lane: Lane, direction: Direction, count: Count): boolean {
  const { refusal, questions } = judge("agility", live.parameters, [{ direction, ...count }]);
  if (refusal === null && questions.length > 0) change(live, lane, (each) => ({ ...each, asked: true }));
  return refusal === null && questions.length === 0;
}

/** Enters the trial as counted, or as tapped if nobody changed the taps. */
function save(live: AgilityLive, lane: Lane, timeStamp: number, sure = false): void {
  const { trial } = lane.state;
  const counting = countingAt(live, lane);
  const count = counting === null ? null : countOf(counting);
  if (trial === null || counting === null) return;
  if (count === null) {
    const open = counting.laps === null ? "laps" : "extra";
    change(live, lane, (each) => goTo(each, open));
    return;
  }
  if (!sure && !isSure(live, lane, trial.direction, count)) return;
  const asTapped =
    trial.landings > 0 &&
    count.laps === trial.laps &&
    count.extra === trial.extra &&
    count.touches === trial.touches;
  if (asTapped) live.tap({ lane: lane.lane, kind: "take", timeStamp });
  else live.tap({ lane: lane.lane, kind: "count", detail: { ...count }, timeStamp });
  goOnFrom(live, lane);
}

/** Goes on to the next lane whose trial is to be counted, so that the next digits are its count. */
function goOnFrom(live: AgilityLive, lane: Lane): void {
  const open = live.lanes.filter(({ state }) => state.trial?.stage === "to-count" && lane.state !== state);
  const following = open.find((each) => each.lane > lane.lane) ?? open[0];
  if (following !== undefined) chooseLane(live, following);
  // Whoever has done both makes room; and those who started together are all counted, so it begins with the first.
  else if (lane.state.counted.length > 0 || wasTogether(live, lane)) forgetLane();
}

function wasTogether({ heat }: AgilityLive, { lane, state }: Lane): boolean {
  const { trial } = state;
  return heat.events.some((each) => each.kind === "go" && each.atMs === trial?.fromMs && each.lane !== lane);
}

/** Returns the keys that work now; the screen shows each one's action beside it. */
export function keys(live: AgilityLive): LiveKeys {
  const lane = laneAtHand(live);
  if (lane === null) return {};
  return { ...keysBetweenLanes(live as never), ...keysOfStage(live, lane), ...keysOfAll(live) };
}

function keysOfAll(live: AgilityLive): LiveKeys {
  return waiting(live).length > 1 ? bind(["A", (timeStamp) => goAll(live, timeStamp)]) : {};
}

function keysOfStage(live: AgilityLive, lane: Lane): LiveKeys {
  const { trial, next: direction } = lane.state;
  if (trial === null) {
    const again = keysOfAgain(lane);
    return direction === null ? again : { ...again, ...bind(["Space", (time) => go(live, lane, time)]) };
  }
  const tap = (kind: string) => (timeStamp: number) => live.tap({ lane: lane.lane, kind, timeStamp });
  const stop = bind(["F", (timeStamp) => falseStart(live, lane, timeStamp)]);
  if (trial.stage !== "to-count") return { ...stop, ...bind(["Space", tap("landing")], ["T", tap("touch")]) };
  // The last landing may be tapped shortly after the whistle.
  const isLate = live.elapsedMs < trial.untilMs + reactionMs;
  return { ...stop, ...keysOfCount(live, lane), ...(isLate ? bind(["Space", tap("landing")]) : {}) };
}

function keysOfAgain({ lane, state }: Lane): LiveKeys {
  const last = state.counted.at(-1);
  if (last === undefined || state.results.length === 0) return {};
  return bind(["R", () => rerunning.set({ lane, direction: last.direction })]);
}

function keysOfCount(live: AgilityLive, lane: Lane): LiveKeys {
  if (countingAt(live, lane)?.asked === true) {
    // Digits and Enter do nothing: whoever types on has not seen the question.
    return bind(
      ["Y", (timeStamp) => agree(live, lane, timeStamp)],
      ["Escape", () => change(live, lane, (counting) => goTo(counting, "laps"))],
    );
  }
  const digits = Array.from({ length: 10 }, (_none, digit) => {
    return [`${digit}`, (timeStamp: number) => answer(live, lane, digit, timeStamp)] as const;
  });
  return bind(
    ...digits,
    ["ArrowUp", () => change(live, lane, (counting) => stepBy(counting, counting.at, 1))],
    ["ArrowDown", () => change(live, lane, (counting) => stepBy(counting, counting.at, -1))],
    ["Backspace", () => change(live, lane, goBack)],
    ["Enter", (timeStamp) => next(live, lane, timeStamp)],
  );
}
