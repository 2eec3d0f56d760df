import { hashOf } from "./joining.ts";
import { type NetworkKeep, readSwitch, writeSwitch } from "./kept.ts";

/** Why a device is none of the table's any more: it was sent away (or left), or its day was closed. */
export type WhyGone = "sentAway" | "closed";

/** How many devices that are gone the table can still tell so: those of four days at most. */
const mostGone = 256;

/**
 * The devices that the table let go. Only they are told to delete what they keep: one that the table does not know,
 * since its cookie ended or since the table came back from an earlier backup, keeps it and joins again.
 */
export interface GoneDevices {
  note(tokenHashes: readonly string[], why: WhyGone): void;
  /** Returns why the holder of a token is gone; null for a token that the table never saw. */
  whyOf(token: string | null): WhyGone | null;
}

export function createGone(keep: NetworkKeep): GoneDevices {
  let gone = readSwitch(keep).gone;
  return {
    note(tokenHashes, why) {
      if (tokenHashes.length === 0) return;
      gone = [...gone, ...tokenHashes.map((tokenHash) => ({ tokenHash, why }))].slice(-mostGone);
      writeSwitch(keep, { ...readSwitch(keep), gone });
    },
    whyOf(token) {
      if (token === null) return null;
      const hash = hashOf(token);
      return gone.findLast(({ tokenHash }) => tokenHash === hash)?.why ?? null;
    },
  };
}
