import { type RefObject, useLayoutEffect, useRef } from "react";

/**
 * Keeps a card inside its paper: where long names, second ways and places take more room than there is, it is set in a
 * smaller size (`data-tight`, twice at most) and never cut.
 */
export function useFit(): RefObject<HTMLElement | null> {
  const paper = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const { current } = paper;
    if (current === null) return;
    for (const tight of ["no", "some", "most"]) {
      current.dataset.tight = tight;
      if (current.scrollHeight <= current.clientHeight) return;
    }
  });
  return paper;
}
