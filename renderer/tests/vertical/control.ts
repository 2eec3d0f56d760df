import { createCell } from "../../app/cell.ts";
import { bind, keysBetweenLanes } from "../live/bind.ts";
import { forgetLane, laneAtHand } from "../live/chosenLane.ts";
import type { LiveKeys } from "../live/liveKeys.ts";
import type { Live, LiveLane } from "../live/tool.ts";
import { isWhole, type ReadLength, readReach, readTouch } from "./reading.ts";

type VerticalLive = Live<"vertical">;
type Lane = LiveLane<"vertical">;

/** A length on its way in. */
export interface Typing {
  readonly text: string;
  /** Somebody pressed Enter, and this came of it. */
  readonly said: Exclude<ReadLength, { state: "fine" }> | null;
  /** Somebody said no: nothing more is said, and nothing goes in by itself, before the text changes. */
  readonly quiet: boolean;
}

const nothing: Typing = { text: "", said: null, quiet: false };
const typed = createCell<ReadonlyMap<string, Typing>>(new Map());
/** The lane whose standing reach is measured again. */
const again = createCell<string | null>(null);
/** Where this desk keeps it, under the name it has always had. */
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
  return typed.get().get(nameOf(live, lane)) ?? nothing;
}

/** Whether three digits go in by themselves; kept on this desk. */
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

/** What is measured now: the standing reach comes first, and again when somebody asks for it. */
export function asksReach(live: VerticalLive, lane: Lane): boolean {
  return lane.state.standingReach === null || again.get() === nameOf(live, lane);
}

export function measureAgain(live: VerticalLive, lane: Lane): void {
  again.set(again.get() === null ? nameOf(live, lane) : null);
}

function setTyping(live: VerticalLive, lane: Lane, typing: Typing): void {
  typed.set(new Map(typed.get()).set(nameOf(live, lane), typing));
}

/** Longer than any way to say a length. */
const longestText = 14;

export function setText(live: VerticalLive, lane: Lane, text: string): void {
  setTyping(live, lane, { text: text.slice(0, longestText), said: null, quiet: false });
}

export function readingOf(live: VerticalLive, lane: Lane): ReadLength {
  const { text } = typingAt(live, lane);
  if (asksReach(live, lane)) return readReach(text, live.lengths);
  return readTouch(text, live.lengths, live.parameters, lane.state);
}

/** What is to be said of the text now: after Enter, or as soon as it can't go on in another way. */
export function saidOf(live: VerticalLive, lane: Lane): Typing["said"] {
  const { text, said, quiet } = typingAt(live, lane);
  if (said !== null || quiet || !isWhole(text, live.lengths)) return said;
  const reading = readingOf(live, lane);
  return reading.state === "fine" ? null : reading;
}

/** Whether the text goes in by itself in a moment. */
export function isHeld(live: VerticalLive, lane: Lane): boolean {
  const { text, quiet } = typingAt(live, lane);
  return auto.get() && !quiet && isWhole(text, live.lengths) && readingOf(live, lane).state === "fine";
}

/** Enters what is typed; a question is asked first, and Enter again is yes. */
export function enter(live: VerticalLive, lane: Lane, timeStamp: number): void {
  // A second Enter right after the first says nothing new.
  if (typingAt(live, lane).text.trim() === "") return;
  const reading = readingOf(live, lane);
  const asked = saidOf(live, lane)?.state === "asked";
  if (reading.state === "refused" || (reading.state === "asked" && !asked)) {
    setTyping(live, lane, { ...typingAt(live, lane), said: reading });
    return;
  }
  const kind = asksReach(live, lane) ? "reach" : "touch";
  const isLast = kind === "touch" && lane.state.trialsLeft === 1;
  live.tap({ lane: lane.lane, kind, detail: { mm: reading.mm }, timeStamp });
  setTyping(live, lane, nothing);
  again.set(null);
  if (isLast) forgetLane();
}

/** Digits that looked like a scan stay in an empty field until somebody presses Enter. */
export function keepStray(live: VerticalLive, digits: string): void {
  const lane = laneAtHand(live);
  if (lane === null || typingAt(live, lane).text !== "") return;
  setTyping(live, lane, { text: digits, said: null, quiet: true });
}

/** No to a question: the text stays to be changed. */
export function refuse(live: VerticalLive, lane: Lane): void {
  setTyping(live, lane, { ...typingAt(live, lane), said: null, quiet: true });
}

/** No more trials, though there are some left. */
export function enough(live: VerticalLive, lane: Lane, timeStamp: number): void {
  if (lane.state.heights.length === 0) return;
  live.tap({ lane: lane.lane, kind: "enough", timeStamp });
  forgetLane();
}

/** Signs that are typed as they are; a comma so that the sentence about it comes. */
const signs = [..."0123456789.,'\"/-"];

/** The keys that work now: what they do stands on the screen beside each. */
export function keys(live: VerticalLive): LiveKeys {
  const lane = laneAtHand(live);
  const between = keysBetweenLanes(live as never);
  if (lane === null || lane.state.trialsLeft === 0 || lane.state.phase === "aside") return between;
  return {
    ...between,
    ...keysOfText(live, lane),
    ...(saidOf(live, lane) === null ? {} : bind(["Escape", () => refuse(live, lane)])),
    ...bind(
      ["Enter", (timeStamp) => enter(live, lane, timeStamp)],
      ["E", (timeStamp) => enough(live, lane, timeStamp)],
      ["M", () => measureAgain(live, lane)],
    ),
  };
}

function keysOfText(live: VerticalLive, lane: Lane): LiveKeys {
  const { text } = typingAt(live, lane);
  const add = (sign: string) => () => setText(live, lane, typingAt(live, lane).text + sign);
  const typing = bind(...signs.map((sign) => [sign, add(sign)] as const));
  // While nothing is typed, Backspace is left to the frame, which takes the last tap back with it.
  if (text === "") return typing;
  return {
    ...typing,
    ...bind(
      ["Backspace", () => setText(live, lane, typingAt(live, lane).text.slice(0, -1))],
      ["Space", add(" ")],
    ),
  };
}
