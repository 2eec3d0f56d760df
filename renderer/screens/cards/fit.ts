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
    setToFit(current);
    if (document.fonts.status === "loaded") return;
    // Until its own typeface is loaded, a card is set in another one that may be wider.
    let here = true;
    void document.fonts.ready.then(() => here && setToFit(current));
    return () => {
      here = false;
    };
  });
  return paper;
}

function setToFit(card: HTMLElement): void {
  for (const tight of ["no", "some", "most"]) {
    card.dataset.tight = tight;
    if (card.scrollHeight <= card.clientHeight) return;
  }
}
