import { type RefObject, useLayoutEffect, useRef } from "react";

/**
 * Returns a ref for a button that goes away once it was pressed: the focus then goes to the next button of its item in
 * the list, and not to the beginning of the page.
 */
export function useFocusStays(): RefObject<HTMLButtonElement | null> {
  const button = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => {
    const own = button.current;
    const item = own?.closest("li");
    return () => {
      if (own !== document.activeElement) return;
      // What stands in its place is there with the next frame.
      requestAnimationFrame(() => item?.querySelector("button")?.focus());
    };
  }, []);
  return button;
}
