import { createContext, use } from "react";

/** The frame's element for a screen's key hints; null until the frame is rendered. */
export const HintsPlace = createContext<HTMLElement | null>(null);

/** Returns the element for a screen's key hints. */
export function useHintsPlace(): HTMLElement | null {
  return use(HintsPlace);
}
