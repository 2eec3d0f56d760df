import { useEffect } from "react";
import { type Meant, meantBy, type Seen } from "./meant.ts";

/** Ms between two looks at where everything is, and how many are kept: as long as a finger needs to see a change. */
const lookMs = 100;
const looksKept = 4;

const pressable = "button, a[href], label, summary";
/** A lane's key while its athlete is at it (`LaneTile`): what it takes is a time, which nobody can take again. */
const running = "[data-running-key]";

/** Where everything that can be pressed was at one look, and which of it took a time. */
type Look = ReadonlyMap<Element, Seen>;

function look(): Look {
  return new Map([...document.querySelectorAll(pressable)].map((key) => [key, seen(key)]));
}

function seen(key: Element): Seen {
  const { left, right, top, bottom } = key.getBoundingClientRect();
  return { left, right, top, bottom, isRunning: key.matches(running) };
}

function isRunning(key: Element): boolean {
  return key.isConnected && key.matches(running);
}

/** True where there are fingers, as far as the system knows; the first touch tells it of any other window. */
function hasFingers(): boolean {
  return matchMedia("(any-pointer: coarse)").matches;
}

/**
 * Ignores a finger on what came under it within the last 0.4 s: it was meant for what was there before. Where that was a
 * lane that is still running, it gets the press. A mouse and keys are left alone, and so is the page that a finger moves
 * itself. Looks are counted and no clock is read; where no finger was ever seen, nothing is looked at.
 */
export function useStillness(): void {
  useEffect(() => {
    let looks: Look[] = [];
    let isDropping = false;
    let timer: ReturnType<typeof setInterval> | undefined;
    function watch(): void {
      timer ??= setInterval(() => {
        looks = [...looks, look()].slice(-looksKept);
      }, lookMs);
    }
    /** A page that is moved by a finger moves on purpose. */
    function forget(): void {
      looks = [];
    }
    function meant(event: PointerEvent): Meant<Element> {
      const target = event.target instanceof Element ? event.target.closest(pressable) : null;
      const before = looks[0];
      return before === undefined ? "target" : meantBy(event, target, before, isRunning);
    }
    function down(event: PointerEvent): void {
      // What was passed on comes by here again.
      if (!event.isTrusted) return;
      isDropping = false;
      if (event.pointerType !== "touch") return;
      watch();
      const found = meant(event);
      isDropping = found !== "target";
      drop(event);
      if (typeof found !== "string") found.dispatchEvent(new PointerEvent(event.type, event));
    }
    function drop(event: Event): void {
      if (!isDropping) return;
      event.preventDefault();
      event.stopPropagation();
    }
    if (hasFingers()) watch();
    const after = ["pointerup", "mousedown", "mouseup", "click"] as const;
    window.addEventListener("pointerdown", down, true);
    window.addEventListener("touchmove", forget, { capture: true, passive: true });
    for (const name of after) window.addEventListener(name, drop, true);
    return () => {
      clearInterval(timer);
      window.removeEventListener("pointerdown", down, true);
      window.removeEventListener("touchmove", forget, true);
      for (const name of after) window.removeEventListener(name, drop, true);
    };
  }, []);
}
