import { useEffect } from "react";

/** Ms between two looks at where everything is, and how many are kept: as long as a finger needs to see a change. */
const lookMs = 100;
const looksKept = 4;

const pressable = "button, a[href], label, summary";

interface Point {
  readonly clientX: number;
  readonly clientY: number;
}

/** Where everything that can be pressed was at one look. */
type Look = ReadonlyMap<Element, DOMRect>;

function look(): Look {
  const all = [...document.querySelectorAll(pressable)];
  return new Map(all.map((each) => [each, each.getBoundingClientRect()]));
}

function lies({ clientX, clientY }: Point, box: DOMRect | undefined): boolean {
  if (box === undefined) return false;
  return clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom;
}

/**
 * Ignores a finger on what came under it within the last 0.4 s: it was meant for what was there before. A mouse and keys
 * are left alone, and so is the page that a finger moves itself. Looks are counted and no clock is read.
 */
export function useStillness(): void {
  useEffect(() => {
    let looks: Look[] = [];
    let isDropping = false;
    const timer = setInterval(() => {
      looks = [...looks, look()].slice(-looksKept);
    }, lookMs);
    /** A page that is moved by a finger moves on purpose. */
    function forget(): void {
      looks = [];
    }
    function down(event: PointerEvent): void {
      isDropping = false;
      const target = event.target instanceof Element ? event.target.closest(pressable) : null;
      const before = looks[0];
      if (event.pointerType !== "touch" || target === null || before === undefined) return;
      isDropping = !lies(event, before.get(target));
      drop(event);
    }
    function drop(event: Event): void {
      if (!isDropping) return;
      event.preventDefault();
      event.stopPropagation();
    }
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
