import type { LiveHeat } from "../../../tests/live/types.ts";

/**
 * Returns the name of the device at which a heat sounds that is looked at from another screen: two beats on one floor,
 * a moment apart, are no beat. Null where it sounds here: the own heat, and one whose device is gone.
 */
export function soundsAt(otherHeat: Pick<LiveHeat, "device" | "deviceIsThere"> | null): string | null {
  return otherHeat?.deviceIsThere === true ? otherHeat.device : null;
}
