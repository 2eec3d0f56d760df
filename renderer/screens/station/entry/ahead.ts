import { useRef, useState } from "react";

/** What was typed for the next athlete while an answer was awaited. */
export interface Ahead {
  /** Digits typed before the first Enter. */
  readonly bib: string;
  /** True if Enter followed them. */
  readonly ended: boolean;
  /** True if more followed, which nobody keeps: values without a bib could end up at anybody's. */
  readonly more: boolean;
}

export const nothingAhead: Ahead = { bib: "", ended: false, more: false };

/** No bib is longer. */
const longestBib = 6;

/** Returns what is kept after one more key: a digit, `Enter` or `Backspace`. */
export function typeAhead(ahead: Ahead, key: string): Ahead {
  const { bib, ended } = ahead;
  if (key === "Backspace") {
    return ended ? { bib, ended: false, more: false } : { ...ahead, bib: bib.slice(0, -1) };
  }
  if (key === "Enter") return bib === "" ? ahead : { ...ahead, ended: true };
  return ended ? { ...ahead, more: true } : { ...ahead, bib: (bib + key).slice(0, longestBib) };
}

export interface AheadBox {
  readonly ahead: Ahead;
  readonly type: (key: string) => void;
  /** Returns what was typed ahead, and forgets it. */
  readonly take: () => Ahead;
}

/** Keeps what is typed ahead; `take` gives the newest, however long ago its caller was made. */
export function useAhead(): AheadBox {
  const [ahead, setAhead] = useState(nothingAhead);
  const newest = useRef(nothingAhead);
  function set(next: Ahead): void {
    newest.current = next;
    setAhead(next);
  }
  return {
    ahead,
    type: (key) => set(typeAhead(newest.current, key)),
    take() {
      const taken = newest.current;
      set(nothingAhead);
      return taken;
    },
  };
}
