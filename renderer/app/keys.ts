import { createContext, use, useLayoutEffect, useRef } from "react";

/** A screen's keys and their actions: `{ "Alt+N": addWalkUp, "/": search, "Escape": clear }`. */
export type Keys = Readonly<Record<string, () => void>>;

/** Inputs without text: a choice, a tick or a slider keeps the focus after a press, and typing means nothing to it. */
const typed = "input:not([type=radio], [type=checkbox], [type=range]), textarea, select, [contenteditable]";

/** True if what is typed goes into a text at the event's target. */
export function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest(typed) !== null;
}

/** True while a dialog lies over the screen. */
export function isOverlaid(): boolean {
  return document.querySelector("[role=dialog], [role=alertdialog]") !== null;
}

/** True for what a dialog shows: its own keys work while it is open. */
export const InDialog = createContext(false);

/** Returns the name of a pressed key as in hints: modifiers, then the key; digits and letters by their position. */
function nameOfKey(event: KeyboardEvent): string {
  const place = /^(?:Key|Digit|Numpad)([A-Z0-9])$/.exec(event.code)?.[1];
  const key = (event.ctrlKey || event.altKey || event.metaKey) && place !== undefined ? place : event.key;
  const parts = [event.ctrlKey || event.metaKey ? "Ctrl" : "", event.altKey ? "Alt" : ""];
  return [...parts, key.length === 1 ? key.toUpperCase() : key].filter((part) => part !== "").join("+");
}

interface Ways {
  /** True for what is urgent: the keys work over a dialog too. */
  readonly always?: boolean;
}

/**
 * Binds shortcuts while the screen is shown. Keys without Ctrl or Alt do nothing while somebody types a text, and those
 * of a screen do nothing under a dialog: they would leave it with what was typed in it. Every bound key must also be
 * visible: as `hint` of its button or in the screen's `hints`.
 */
export function useKeys(keys: Keys, { always = false }: Ways = {}): void {
  const isOver = use(InDialog) || always;
  const latest = useRef({ keys, isOver });
  // Before the screen is painted: a visible key must work.
  useLayoutEffect(() => {
    latest.current = { keys, isOver };
  });
  useLayoutEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      const act = latest.current.keys[nameOfKey(event)];
      if (act === undefined || event.defaultPrevented || event.isComposing) return;
      if (isTyping(event.target) && !event.ctrlKey && !event.altKey && !event.metaKey) return;
      if (!latest.current.isOver && isOverlaid()) return;
      event.preventDefault();
      act();
    }
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, []);
}
