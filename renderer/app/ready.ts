import { useEffect, useState } from "react";

/**
 * Signals to the outside (tests, the shell's first show) that the first screen has its data: sets `<html
 * data-ready="true">`. Call it once per screen, with true as soon as the screen shows its content.
 */
export function useReady(ready: boolean): void {
  useEffect(() => {
    if (ready) document.documentElement.dataset.ready = "true";
  }, [ready]);
}

/** Names a paper page, as the system's dialog and the file take it; null or undefined while it is not known. */
export function usePaperTitle(title: string | null | undefined): void {
  useEffect(() => {
    if (title != null) document.title = title;
  }, [title]);
}

/** True once a paper page's font has loaded, after it shows text: before, lines would break elsewhere. */
export function useType(shown = true): boolean {
  const [there, setThere] = useState(false);
  useEffect(() => {
    let here = true;
    if (shown) void document.fonts.ready.then(() => here && setThere(true));
    return () => {
      here = false;
    };
  }, [shown]);
  return there;
}
