import { useLayoutEffect, useRef } from "react";
import { flushSync } from "react-dom";
import { mostLanes } from "../../../electron/domain/heats/heat.ts";

/** The lanes' keys, by their places on the keyboard: the row of digits and the two keys after it. */
const laneCodes = [
  ...["Digit1", "Digit2", "Digit3", "Digit4", "Digit5", "Digit6"],
  ...["Digit7", "Digit8", "Digit9", "Digit0", "Minus", "Equal"],
];
const laneKeys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0", "-", "="];

/** The key of a lane as it is written on the screen. */
export function keyOfLane(lane: number): string {
  return laneKeys[lane - 1] ?? "";
}

/** What keys do; `timeStamp` is the native event's. "Space", "Enter", "Backspace", "A", "1", "Shift+1", "Escape". */
export type LiveKeys = Readonly<Record<string, (timeStamp: number) => void>>;

/** A press as its name; keys of lanes by their place, so that Shift and other layouts change nothing. */
export function nameOfPress(event: Pick<KeyboardEvent, "code" | "key" | "shiftKey">): string {
  const place = laneCodes.indexOf(event.code);
  const numpad = /^Numpad([0-9])$/.exec(event.code)?.[1];
  const letter = /^Key([A-Z])$/.exec(event.code)?.[1];
  const name =
    place >= 0 ? keyOfLane(place + 1) : (numpad ?? letter ?? (event.key === " " ? "Space" : event.key));
  return event.shiftKey && (place >= 0 || letter !== undefined) ? `Shift+${name}` : name;
}

/** Keys of a scanner follow each other within this many ms; nobody types that fast, digit after digit and Enter. */
export const scannerMs = 50;

interface Press {
  readonly name: string;
  readonly timeStamp: number;
}

/** Tells the digits of a scanner from those of a finger. */
export interface Sorter {
  /** True when the press is taken: it will be acted on, or is part of a scan. */
  press(press: Press): void;
  stop(): void;
}

/**
 * Holds digits back for the time in which a scanner would have sent the next one: digits that follow each other that
 * fast and end with Enter are a bib, everything else is what it looks like, with the time at which it was pressed.
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

/** Inputs that take no text: a choice or a slider keeps the focus once it was pressed, and the lanes' keys go on. */
const typed = "input:not([type=radio], [type=checkbox], [type=range]), textarea, select, [contenteditable]";
/** What Space or Enter does something to: nothing happens to a choice that is made already, or to a slider. */
const controls =
  "button, a, input[type=checkbox], input[type=radio]:not(:checked), [role=radio], [role=slider]";

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest(typed) !== null;
}

/** Space and Enter belong to a control that has the focus. */
function isControl(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest(controls) !== null;
}

function isOverlaid(): boolean {
  return document.querySelector("[role=dialog], [role=alertdialog]") !== null;
}

/**
 * Binds keys of a live screen, each with the time at which it was pressed. Nothing is taken while somebody types, with
 * Ctrl, Alt or Meta, while a dialog stands open, or from a key that repeats. `keys` is asked at each press: a question
 * that stands on the screen has its keys, whether or not what is around it has been drawn anew.
 */
export function useLiveKeys(keys: () => LiveKeys, onScan: (bib: string) => void): void {
  const latest = useRef({ keys, onScan });
  // Before the screen is painted: a key that is shown works.
  useLayoutEffect(() => {
    latest.current = { keys, onScan };
  });
  useLayoutEffect(() => {
    const sorter = createSorter(
      (bib) => latest.current.onScan(bib),
      // Presses that were held back come at once: each has to see what the one before it changed.
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
        // The Enter of a scanner must not press what happens to have the focus.
        if (name === "Enter" && scanning(event.timeStamp)) event.preventDefault();
        else return;
      }
      const isDigit = /^\d$/.test(name);
      if (isDigit) lastDigit = event.timeStamp;
      if (!isDigit && name !== "Enter" && latest.current.keys()[name] === undefined) return;
      if (name !== "Enter") event.preventDefault();
      if (!event.repeat) sorter.press({ name, timeStamp: event.timeStamp });
    }
    let lastDigit = Number.NEGATIVE_INFINITY;
    function scanning(timeStamp: number): boolean {
      return timeStamp - lastDigit <= scannerMs;
    }
    window.addEventListener("keydown", onKeyDown, true);
    return () => {
      window.removeEventListener("keydown", onKeyDown, true);
      ended = true;
      sorter.stop();
    };
  }, []);
}

/** The keys of all lanes: `act` with the lane and the time. */
export function keysOfLanes(act: (lane: number, timeStamp: number) => void, shift = false): LiveKeys {
  const entries = Array.from({ length: mostLanes }, (_, index) => {
    const name = `${shift ? "Shift+" : ""}${keyOfLane(index + 1)}`;
    return [name, (timeStamp: number) => act(index + 1, timeStamp)] as const;
  });
  return Object.fromEntries(entries);
}
