import type { Holder } from "../../store/tables/heats.ts";
import type { Desk } from "../door/desk.ts";

/** A device says that it is there every five seconds: one that misses three of them is gone, in ms. */
const lately = 16_000;

/** Returns true while the device that holds a heat is joined and was heard of lately. The table is never asked about. */
export function isThere({ network }: Desk, holder: Holder): boolean {
  if (holder === null || network === null) return false;
  const heardMs = network.view().devices.find(({ id }) => id === holder)?.heardMs ?? null;
  return heardMs !== null && heardMs < lately;
}
