import { useLayoutEffect, useRef } from "react";

/** A screen's keys and their actions: `{ "Alt+N": addWalkUp, "/": search, "Escape": clear }`. */
export type Keys = Readonly<Record<string, () => void>>;

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && target.closest("input, textarea, select, [contenteditable]") !== null
  );
}

/** Returns the name of a pressed key as in hints: modifiers, then the key; digits and letters by their position. */
function nameOfKey(event: KeyboardEvent): string {
  const place = /^(?:Key|Digit|Numpad)([A-Z0-9])$/.exec(event.code)?.[1];
  const key = (event.ctrlKey || event.altKey || event.metaKey) && place !== undefined ? place : event.key;
  const parts = [event.ctrlKey || event.metaKey ? "Ctrl" : "", event.altKey ? "Alt" : ""];
  return [...parts, key.length === 1 ? key.toUpperCase() : key].filter((part) => part !== "").join("+");
}

/**
 * Binds shortcuts while the screen is shown. Keys without Ctrl or Alt do nothing while somebody types. Every bound key
 * must also be visible: as `hint` of its button or in the screen's `hints`.
 */
export function useKeys(keys: Keys): void {
  const latest = useRef(keys);
  // Before the screen is painted: a visible key must work.
  useLayoutEffect(() => {
    latest.current = keys;
  });
  useLayoutEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      const act = latest.current[nameOfKey(event)];
      if (act === undefined || event.defaultPrevented || event.isComposing) return;
      if (isTyping(event.target) && !event.ctrlKey && !event.altKey && !event.metaKey) return;
      event.preventDefault();
      act();
    }
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, []);
}
