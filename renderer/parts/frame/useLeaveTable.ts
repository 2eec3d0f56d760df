import { useState } from "react";
import { keptHere } from "../../app/device-keep.ts";
import { leaveTable } from "../../app/membership.ts";

interface Leaving {
  readonly leave: () => void;
  readonly busy: boolean;
  /** True once the table was asked and did not answer: the device is still its. */
  readonly isAway: boolean;
  /** Number of entries that the table never had, which are lost by leaving. */
  readonly waiting: number;
}

/** Returns what a device needs to leave the table. */
export function useLeaveTable(): Leaving {
  const [busy, setBusy] = useState(false);
  const [isAway, setAway] = useState(false);
  const waiting = keptHere.use().filter(({ saved }) => !saved).length;
  async function leave(): Promise<void> {
    setBusy(true);
    // Where it is left, this page goes.
    if (await leaveTable()) return;
    setBusy(false);
    setAway(true);
  }
  return { leave: () => void leave(), busy, isAway, waiting };
}
