import { undoable } from "../../../electron/domain/heats/fold.ts";
import type { Length } from "../../../electron/domain/length.ts";
import type { What } from "../../../electron/domain/tests/live.ts";
import type { VerticalTap } from "../../../electron/domain/tests/vertical/live.ts";
import { createCell } from "../../app/cell.ts";
import { dropDraft, keepDraft, keptReading } from "../../app/kept-drafts.ts";
import { bind, keysBetweenLanes } from "../live/bind.ts";
import { forgetLane, laneAtHand } from "../live/chosenLane.ts";
import type { LiveKeys } from "../live/liveKeys.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import { isWhole, type ReadLength, readReach, readTouch, withSign } from "./reading.ts";

type VerticalLive = Live<"vertical">;
type Lane = LiveLane<"vertical">;

/** A length being typed. */
export interface Typing {
  readonly text: string;
  /** The result of the last Enter. */
  readonly said: Exclude<ReadLength, { state: "fine" }> | null;
  /** The question was answered no: don't ask again or auto-submit until the text changes. */
  readonly quiet: boolean;
}

const nothing: Typing = { text: "", said: null, quiet: false };
const typed = createCell<ReadonlyMap<string, Typing>>(new Map());
/** The lane whose standing reach is measured again. */
const again = createCell<string | null>(null);
/** The storage key of this desk's choice, under its original name. */
const autoPlace = "live.leap.auto";
const auto = createCell(localStorage.getItem(autoPlace) !== "no");

function nameOf(live: VerticalLive, lane: Lane): string {
  return `${live.heat.heatId}.${lane.in.who.athleteId}`;
}

export function useTyping(live: VerticalLive, lane: Lane): Typing {
  typed.use();
  again.use();
  return typingAt(live, lane);
}

function typingAt(live: VerticalLive, lane: Lane): Typing {
  return typed.get().get(nameOf(live, lane)) ?? leftAt(live, lane) ?? nothing;
}

/** Returns what an earlier page of this device left half typed; it goes in by a key alone. */
function leftAt({ heat }: VerticalLive, lane: Lane): Typing | null {
  const text = keptReading(heat.heatId, lane.in.who.athleteId);
  return text === null ? null : { text, said: null, quiet: true };
}

/** Returns whether three digits are entered automatically, a choice kept on this desk. */
export function useAuto(): { readonly isAuto: boolean; readonly setAuto: (isAuto: boolean) => void } {
  const isAuto = auto.use();
  return {
    isAuto,
    setAuto(next) {
      localStorage.setItem(autoPlace, next ? "yes" : "no");
      auto.set(next);
    },
  };
}

/** True if the standing reach is asked: it comes first, and again on request. */
export function asksReach(live: VerticalLive, lane: Lane): boolean {
  return lane.state.standingReach === null || again.get() === nameOf(live, lane);
}

export function measureAgain(live: VerticalLive, lane: Lane): void {
  again.set(again.get() === null ? nameOf(live, lane) : null);
}

function setTyping(live: VerticalLive, lane: Lane, typing: Typing): void {
  typed.set(new Map(typed.get()).set(nameOf(live, lane), typing));
  const { athleteId, bib } = lane.in.who;
  const draft = { is: "reading", test: "vertical", athleteId, bib: String(bib ?? "") } as const;
  if (typing.text === "") dropDraft(draft);
  else keepDraft({ ...draft, heatId: live.heat.heatId, text: typing.text });
}

export function setText(live: VerticalLive, lane: Lane, text: string): void {
  setTyping(live, lane, { text, said: null, quiet: false });
}

/** Adds a sign as it is typed. No reading in centimetres begins with a half: that one came too late for the last. */
export function addSign(live: VerticalLive, lane: Lane, sign: string, timeStamp: number): void {
  const isLate = live.lengths === "cm" && typingAt(live, lane).text === "" && /^[.,]5?$/.test(sign);
  if (isLate) addHalf(live, timeStamp);
  else addToText(live, lane, sign, timeStamp);
}

/**
 * Adds a sign to the reading. After a question or a refusal it begins the reading anew; a digit after a whole reading
 * belongs to the next one, which is entered first if it is about to be.
 */
function addToText(live: VerticalLive, lane: Lane, sign: string, timeStamp: number): void {
  const { text, quiet } = typingAt(live, lane);
  const added = withSign(text, sign, live.lengths);
  const begins = /\d/.test(sign) && (saidOf(live, lane) !== null || (quiet && added === null));
  if (added === null && !begins && !isHeld(live, lane)) return;
  if (added === null && !begins) enter(live, lane, timeStamp);
  setText(live, lane, added === null || begins ? (withSign("", sign, live.lengths) ?? "") : added);
}

export function readingOf(live: VerticalLive, lane: Lane): ReadLength {
  const { text } = typingAt(live, lane);
  if (asksReach(live, lane)) return readReach(text, live.lengths);
  return readTouch(text, live.lengths, live.parameters, lane.state);
}

/** Returns the remark on the current text: after Enter, or once no continuation can be right. */
export function saidOf(live: VerticalLive, lane: Lane): Typing["said"] {
  const { text, said, quiet } = typingAt(live, lane);
  if (said !== null || quiet || !isWhole(text, live.lengths)) return said;
  const reading = readingOf(live, lane);
  return reading.state === "fine" ? null : reading;
}

/** True if the text is about to be entered automatically. */
export function isHeld(live: VerticalLive, lane: Lane): boolean {
  const { text, quiet } = typingAt(live, lane);
  return auto.get() && !quiet && isWhole(text, live.lengths) && readingOf(live, lane).state === "fine";
}

/** Enters the typed text; a question is asked instead, to which no Enter is a yes. */
export function enter(live: VerticalLive, lane: Lane, timeStamp: number): void {
  // A second Enter right after the first adds nothing.
  if (typingAt(live, lane).text.trim() === "") return;
  const reading = readingOf(live, lane);
  if (reading.state === "fine") take(live, lane, reading.length, timeStamp);
  else setTyping(live, lane, { ...typingAt(live, lane), said: reading });
}

/** Answers a question with yes. */
export function agree(live: VerticalLive, lane: Lane, timeStamp: number): void {
  const said = saidOf(live, lane);
  if (said?.state === "asked") take(live, lane, said.length, timeStamp);
}

/** Adds a half to the reading that went in last, while it can be undone: it is undone and taken anew. */
function addHalf(live: VerticalLive, timeStamp: number): void {
  const last = undoable(live.heat.events as never, live.clock.elapsed())?.event;
  const lane = live.lanes.find((each) => each.lane === last?.lane);
  if (last === undefined || lane === undefined || !isLength(last)) return;
  const { length } = last.detail;
  if (length.unit !== "cm" || length.halves % 2 !== 0) return;
  live.takeBack(last.id);
  const longer: Length = { unit: "cm", halves: length.halves + 1 };
  live.tap({ lane: lane.lane, kind: last.kind, detail: { ...last.detail, length: longer }, timeStamp });
}

function isLength(tap: What): tap is Extract<VerticalTap, { readonly kind: "reach" | "touch" }> {
  return tap.kind === "reach" || tap.kind === "touch";
}

function take(live: VerticalLive, lane: Lane, length: Length, timeStamp: number): void {
  const kind = asksReach(live, lane) ? "reach" : "touch";
  const isLast = kind === "touch" && lane.state.trialsLeft === 1;
  live.tap({ lane: lane.lane, kind, detail: { length }, timeStamp });
  setTyping(live, lane, nothing);
  again.set(null);
  if (isLast) forgetLane();
}

/** Keeps digits that looked like a scan in an empty field until somebody presses Enter. */
export function keepStray(live: VerticalLive, digits: string): void {
  const lane = laneAtHand(live);
  if (lane === null || typingAt(live, lane).text !== "") return;
  setTyping(live, lane, { text: digits, said: null, quiet: true });
}

/** Answers a question with no: the text stays, to be changed. */
export function refuse(live: VerticalLive, lane: Lane): void {
  setTyping(live, lane, { ...typingAt(live, lane), said: null, quiet: true });
}

/** Ends the trials, though there are some left. */
export function enough(live: VerticalLive, lane: Lane, timeStamp: number): void {
  if (lane.state.heights.length === 0) return;
  live.tap({ lane: lane.lane, kind: "enough", timeStamp });
  setTyping(live, lane, nothing);
  forgetLane();
}

/** Characters typed as they are; the comma only brings up the sentence about it. */
const signs = [..."0123456789.,'\"/-"];

/** Returns the keys that work now; the screen shows each one's action beside it. */
export function keys(live: VerticalLive): LiveKeys {
  const lane = laneAtHand(live);
  const between = keysBetweenLanes(live as never);
  if (lane === null || lane.state.trialsLeft === 0 || lane.state.phase === "aside") return between;
  return {
    ...between,
    ...keysOfText(live, lane),
    ...(saidOf(live, lane) === null ? {} : bind(["Escape", () => refuse(live, lane)])),
    ...(saidOf(live, lane)?.state === "asked" ? bind(["Y", (time) => agree(live, lane, time)]) : {}),
    ...bind(
      ["Enter", (timeStamp) => enter(live, lane, timeStamp)],
      ["E", (timeStamp) => enough(live, lane, timeStamp)],
      ["M", () => measureAgain(live, lane)],
    ),
  };
}

function keysOfText(live: VerticalLive, lane: Lane): LiveKeys {
  const { text } = typingAt(live, lane);
  const add = (sign: string) => (timeStamp: number) => addSign(live, lane, sign, timeStamp);
  const typing = bind(...signs.map((sign) => [sign, add(sign)] as const));
  // Without any text, Backspace is left to the frame, which undoes the last tap.
  if (text === "") return typing;
  return {
    ...typing,
    ...bind(
      ["Backspace", () => setText(live, lane, typingAt(live, lane).text.slice(0, -1))],
      ["Space", add(" ")],
    ),
  };
}
