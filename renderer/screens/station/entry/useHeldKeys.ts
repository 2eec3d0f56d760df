import { type RefObject, useLayoutEffect, useRef } from "react";

/** Says what a key does; undefined leaves it to whatever has the focus. */
export type HeldKey = (key: string, event: KeyboardEvent) => (() => void) | undefined;

/**
 * Takes keys before anything else gets them, while `within` (or nothing at all) has the focus: somebody types heads
 * down, and what they type means something else than they know.
 */
export function useHeldKeys(within: RefObject<HTMLElement | null>, actOf: HeldKey | null): void {
  const latest = useRef(actOf);
  useLayoutEffect(() => {
    latest.current = actOf;
  });
  useLayoutEffect(() => {
    function onKeyDown(event: KeyboardEvent): void {
      if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
      const { target } = event;
      if (!(target instanceof Node)) return;
      if (target !== document.body && within.current?.contains(target) !== true) return;
      const act = latest.current?.(event.key, event);
      if (act === undefined) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      act();
    }
    window.addEventListener("keydown", onKeyDown, true);
    return () => window.removeEventListener("keydown", onKeyDown, true);
  }, [within]);
}

/** True for the keys that a next athlete's bib is made of. */
export function isOfBib(key: string): boolean {
  return /^\d$/.test(key) || key === "Enter" || key === "Backspace";
}
