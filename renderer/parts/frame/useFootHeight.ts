import { type RefObject, useEffect } from "react";

/**
 * Keeps the height of the foot in `--foot-height`. A message makes the foot higher, and what stays in sight above it must
 * not be covered.
 */
export function useFootHeight(foot: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const { current } = foot;
    if (current === null) return;
    const style = document.documentElement.style;
    const observer = new ResizeObserver(() => {
      style.setProperty("--foot-height", `${current.getBoundingClientRect().height}px`);
    });
    observer.observe(current);
    return () => observer.disconnect();
  }, [foot]);
}
