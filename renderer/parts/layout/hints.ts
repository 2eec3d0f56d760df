import { createContext, use } from "react";

/** Where the frame shows the keys of the screen; null until the frame stands. */
export const HintsPlace = createContext<HTMLElement | null>(null);

/** The element into which a screen puts its key hints. */
export function useHintsPlace(): HTMLElement | null {
  return use(HintsPlace);
}
