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
    setToFitSoon(current);
    if (document.fonts.status === "loaded") return;
    // Until its own typeface is loaded, a card is set in another one that may be wider.
    let here = true;
    void document.fonts.ready.then(() => here && setToFitSoon(current));
    return () => {
      here = false;
    };
  });
  return paper;
}

const waiting = new Set<HTMLElement>();

/** Sets a card in a moment, before it is shown, with all that are laid out at once: each by itself lays out the page again. */
function setToFitSoon(card: HTMLElement): void {
  if (waiting.size === 0) queueMicrotask(setAllToFit);
  waiting.add(card);
}

/** Writes to all cards before it measures any of them. */
function setAllToFit(): void {
  let cards = [...waiting];
  waiting.clear();
  for (const tight of ["no", "some", "most"]) {
    for (const card of cards) card.dataset.tight = tight;
    cards = cards.filter((card) => card.scrollHeight > card.clientHeight);
  }
}
