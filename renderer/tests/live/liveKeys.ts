import { useLayoutEffect, useRef } from "react";
import { flushSync } from "react-dom";
import { mostLanes } from "../../../electron/domain/heats/heat.ts";
import { isOverlaid, isTyping } from "../../app/keys.ts";

/** The lanes' keys by their positions on the keyboard: the row of digits and the two keys after it. */
const laneCodes = [
  ...["Digit1", "Digit2", "Digit3", "Digit4", "Digit5", "Digit6"],
  ...["Digit7", "Digit8", "Digit9", "Digit0", "Minus", "Equal"],
];
const laneKeys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0", "-", "="];

/** The key of a lane as it is written on the screen. */
export function keyOfLane(lane: number): string {
  return laneKeys[lane - 1] ?? "";
}

/** Keys and what they do, with the native event's `timeStamp`: "Space", "Enter", "A", "1", "Shift+1", "Escape". */
export type LiveKeys = Readonly<Record<string, (timeStamp: number) => void>>;

/** Returns a press's name; lanes' keys go by position, so that Shift and other layouts change nothing. */
export function nameOfPress(event: Pick<KeyboardEvent, "code" | "key" | "shiftKey">): string {
  const place = laneCodes.indexOf(event.code);
  const numpad = /^Numpad([0-9])$/.exec(event.code)?.[1];
  const letter = /^Key([A-Z])$/.exec(event.code)?.[1];
  const name =
    place >= 0 ? keyOfLane(place + 1) : (numpad ?? letter ?? (event.key === " " ? "Space" : event.key));
  return event.shiftKey && (place >= 0 || letter !== undefined) ? `Shift+${name}` : name;
}

/** Most ms between two keys of a scanner; nobody types digit after digit and Enter that fast. */
export const scannerMs = 50;

interface Press {
  readonly name: string;
  readonly timeStamp: number;
}

/** Separates a scanner's digits from a finger's. */
export interface Sorter {
  /** Adds a press, which is then acted on or becomes part of a scan. */
  press(press: Press): void;
  stop(): void;
}

/**
 * Holds digits for the time in which a scanner would send the next one. Digits that follow each other that fast and end
 * with Enter are a bib; everything else is an ordinary press, with its own time.
 */
export function createSorter(onScan: (bib: string) => void, onPress: (press: Press) => void): Sorter {
  let held: Press[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  function release(): void {
    clearTimeout(timer);
    const all = held;
    held = [];
    for (const each of all) onPress(each);
  }
  return {
    press(press) {
      const last = held.at(-1);
      const follows = last !== undefined && press.timeStamp - last.timeStamp <= scannerMs;
      if (last !== undefined && !follows) release();
      if (press.name === "Enter" && follows) {
        clearTimeout(timer);
        const bib = held.map(({ name }) => name).join("");
        held = [];
        onScan(bib);
      } else if (/^\d$/.test(press.name)) {
        held.push(press);
        clearTimeout(timer);
        timer = setTimeout(release, scannerMs + 10);
      } else {
        release();
        onPress(press);
      }
    },
    stop: release,
  };
}

/** Controls that react to Space or Enter, unlike a selected choice or a slider. */
const controls =
  "button, a, input[type=checkbox], input[type=radio]:not(:checked), [role=radio], [role=slider]";

/**
 * True if somebody went to the focused control by Tab, and has not touched anything since. One that a finger or a closed
 * dialog left the focus on has no claim to the screen's keys.
 */
let byTab = false;

/** True for a control that Space and Enter would press. */
function isControl(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest(controls) !== null;
}

/**
 * Binds the keys of a live screen, each with the time of its press. Ignores keys while somebody types, with Ctrl, Alt
 * or Meta, while a dialog is open, and repeats. `keys` is called at each press, so that a question on the screen has
 * its keys even before the rest is rendered again.
 */
export function useLiveKeys(keys: () => LiveKeys, onScan: (bib: string) => void): void {
  const latest = useRef({ keys, onScan });
  // Before the screen is painted: a visible key must work.
  useLayoutEffect(() => {
    latest.current = { keys, onScan };
  });
  useLayoutEffect(() => {
    const sorter = createSorter(
      (bib) => latest.current.onScan(bib),
      // Held presses are released at once: each has to see the changes of the one before.
      ({ name, timeStamp }) => {
        const act = () => latest.current.keys()[name]?.(timeStamp);
        if (ended) act();
        else flushSync(act);
      },
    );
    let ended = false;
    function onKeyDown(event: KeyboardEvent): void {
      if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing || isOverlaid()) return;
      if (isTyping(event.target)) return;
      const name = nameOfPress(event);
      if ((name === "Space" || name === "Enter") && isControl(event.target)) {
        // A scanner's Enter must not press the focused control.
        const isScan = name === "Enter" && scanning(event.timeStamp);
        if (!isScan && (byTab || latest.current.keys()[name] === undefined)) return;
        event.preventDefault();
        event.stopPropagation();
      }
      const isDigit = /^\d$/.test(name);
      if (isDigit) lastDigit = event.timeStamp;
      if (!isDigit && name !== "Enter" && latest.current.keys()[name] === undefined) return;
      if (name !== "Enter") event.preventDefault();
      if (!event.repeat) sorter.press({ name, timeStamp: event.timeStamp });
    }
    let lastDigit = Number.NEGATIVE_INFINITY;
    function onTab({ key }: KeyboardEvent): void {
      if (key === "Tab") byTab = true;
    }
    function onPointer(): void {
      byTab = false;
    }
    function scanning(timeStamp: number): boolean {
      return timeStamp - lastDigit <= scannerMs;
    }
    window.addEventListener("keydown", onKeyDown, true);
    window.addEventListener("keydown", onTab, true);
    window.addEventListener("pointerdown", onPointer, true);
    return () => {
      window.removeEventListener("keydown", onKeyDown, true);
      window.removeEventListener("keydown", onTab, true);
      window.removeEventListener("pointerdown", onPointer, true);
      ended = true;
      sorter.stop();
    };
  }, []);
}

/** Returns the keys of all lanes: `act` gets the lane and the time. */
export function keysOfLanes(act: (lane: number, timeStamp: number) => void, shift = false): LiveKeys {
  const entries = Array.from({ length: mostLanes }, (_, index) => {
    const name = `${shift ? "Shift+" : ""}${keyOfLane(index + 1)}`;
    return [name, (timeStamp: number) => act(index + 1, timeStamp)] as const;
  });
  return Object.fromEntries(entries);
}
