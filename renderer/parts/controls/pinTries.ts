import { useEffect, useState } from "react";

/** Counts a wait down on the page's own clock: whole seconds left, and a restart. The desk decides in any case. */
export function useWait(waitMs: number): { readonly seconds: number; readonly begin: (ms: number) => void } {
  const [until, setUntil] = useState(() => performance.now() + waitMs);
  const [now, setNow] = useState(() => performance.now());
  const left = until - now;
  const waits = left > 0;
  useEffect(() => {
    if (!waits) return;
    const timer = setInterval(() => setNow(performance.now()), 200);
    return () => clearInterval(timer);
  }, [waits]);
  return {
    seconds: Math.max(0, Math.ceil(left / 1000)),
    begin(ms) {
      const at = performance.now();
      setNow(at);
      setUntil(at + ms);
    },
  };
}
