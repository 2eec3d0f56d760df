import { keptCell } from "./cell.ts";

/** For which place this device was told what to do there, through reloads of its page; empty: for none yet. */
export const arrivedAt = keptCell(sessionStorage, "arrivedAt", (kept) => kept ?? "");
