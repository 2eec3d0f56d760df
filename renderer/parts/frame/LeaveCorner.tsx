import { useEffect, useState } from "react";
import css from "./LeaveCorner.module.css";
import { LeaveTable } from "./LeaveTable.tsx";

/** How long the key stays after somebody moved the pointer, in ms. */
const staysMs = 6_000;

/** The key to leave the table on a laptop that is a big screen: in sight only while somebody is at the laptop. */
export function LeaveCorner() {
  const [shown, setShown] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    function show(): void {
      setShown(true);
      clearTimeout(timer);
      timer = setTimeout(() => setShown(false), staysMs);
    }
    const events = ["pointermove", "pointerdown", "keydown"] as const;
    for (const event of events) window.addEventListener(event, show);
    return () => {
      clearTimeout(timer);
      for (const event of events) window.removeEventListener(event, show);
    };
  }, []);
  return (
    <div className={css.corner} data-shown={shown}>
      <LeaveTable />
    </div>
  );
}
