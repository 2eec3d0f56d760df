import { useState } from "react";

/** Whether a part of a screen is folded away; remembered on this desk. */
export function useFolded(name: string): { folded: boolean; fold: () => void } {
  const place = `folded.${name}`;
  const [folded, setFolded] = useState(() => localStorage.getItem(place) === "yes");
  function fold(): void {
    localStorage.setItem(place, folded ? "no" : "yes");
    setFolded(!folded);
  }
  return { folded, fold };
}
