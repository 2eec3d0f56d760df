import { useEffect } from "react";

/**
 * Tells the outside (tests, the shell's first show) that the first screen has its data: sets
 * `<html data-ready="true">`. Call it once a screen, with true as soon as the screen shows what it is for.
 */
export function useReady(ready: boolean): void {
  useEffect(() => {
    if (ready) document.documentElement.dataset.ready = "true";
  }, [ready]);
}
