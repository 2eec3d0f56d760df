import type { Desk } from "../door/desk.ts";

/** True if a desk still has this store; it may have gone to another one meanwhile, and the one before is closed. */
export function isInUse(desk: Desk, store: Desk["store"]): boolean {
  try {
    return desk.store === store;
  } catch {
    // The desk of a request says so by refusing.
    return false;
  }
}
