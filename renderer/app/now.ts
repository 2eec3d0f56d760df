import { useEffect, useState } from "react";

/** Ms between looks at the calendar: a timer for midnight would be late by as long as the machine has slept. */
const lookMs = 5_000;

/** Calls `begin` whenever another calendar day has begun; ends when the returned function is called. */
export function followDays(begin: () => void): () => void {
  let day = new Date().toDateString();
  const timer = setInterval(() => {
    const now = new Date().toDateString();
    if (now === day) return;
    day = now;
    begin();
  }, lookMs);
  return () => clearInterval(timer);
}

/** Returns the current time, updated every fifteen seconds: for "rests until". */
export function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 15_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
