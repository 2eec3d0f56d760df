import { createContext, useContext } from "react";

const Here = createContext(true);

/** Says of a heat's screen whether the heat sounds in this window; false while another device beats for the same floor. */
export const SoundsHere = Here.Provider;

export function useSoundsHere(): boolean {
  return useContext(Here);
}
