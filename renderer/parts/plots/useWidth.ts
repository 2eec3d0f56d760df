import { type RefObject, useLayoutEffect, useState } from "react";

/** Returns an element's width in whole px, kept up to date; a default until it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(640);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    function measure(): void {
      const measured = Math.round(current?.clientWidth ?? 0);
      if (measured > 0) setWidth(measured);
    }
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return width;
}
