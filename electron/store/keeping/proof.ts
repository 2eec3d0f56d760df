import type { LogTally, Seal, Stretch } from "../../domain/backups/records.ts";
import { StoreRefused } from "../connection/refused.ts";
import { reading, sameSum, takenIn, wholeSum } from "./laid-over.ts";
import { checkLog, type LogState } from "./log-check.ts";
import { type PageSums, readPageSums } from "./page-sums.ts";
import { logFile, readGuards } from "./seal.ts";

/** The verdict of seal, log and tally on a store. */
export interface Proof {
  /** True if every byte is proved; false also if there is neither seal nor tally, and so no proof either way. */
  readonly proved: boolean;
  readonly against: StoreRefused | null;
  /** The sums of the proved file's pages, for the guard to go on from; null for a seal of before that had none. */
  readonly sums: PageSums | null;
}

/** Judges a store that nothing has open. `told` hears now and then how many bytes of the file were read. */
export function proofOf(file: string, told?: (bytes: number) => void): Proof {
  const log = checkLog(logFile(file));
  if (log.spoilt) return against("shortened", "the log is spoilt in its middle");
  const { seal, tally } = readGuards(file);
  if (seal === "absent" && tally === "absent") return { proved: false, against: null, sums: null };
  if (typeof seal === "string") return against("changed", `the seal is ${seal}`);
  if (typeof tally === "string") return against("changed", `the tally is ${tally}`);
  const taken = takenIn(seal, log);
  if (log.committed < taken) return lost(taken - log.committed);
  const { sum, sums } = sumsFor(seal, file, log, taken, told);
  if (!sameSum(sum, seal.file)) return against("changed", "the file does not have the seal's sum");
  return tallyHolds(seal, tally, log) ?? { proved: true, against: null, sums };
}

function sumsFor(
  { file: sealed }: Seal,
  file: string,
  log: LogState,
  taken: number,
  told: ((bytes: number) => void) | undefined,
): { readonly sum: Seal["file"]; readonly sums: PageSums | null } {
  if ("sha256" in sealed) return { sum: wholeSum(file, log, taken, told), sums: null };
  const sums = reading(file, (handle) => readPageSums(handle, log, taken, sealed.pageBytes, told));
  return { sum: sums.sum, sums };
}

function tallyHolds(seal: Seal, tally: LogTally, log: LogState): Proof | null {
  // The seal is written before the checkpoint and the tally after it: a crash in between leaves them one apart.
  const apart = seal.number - tally.number;
  if (apart !== 0 && apart !== 1) return against("changed", "the tally is another seal's");
  const now = apart === 0;
  if (now && tally.log !== null) return reaches(tally.log, log);
  // No commit was answered since the seal; the log may hold a first commit that never was.
  const unanswered = log.ends.filter((end) => end > takenIn(seal, log)).length;
  if (unanswered <= (now && tally.shut ? 0 : 1)) return null;
  return against("changed", "the log is not this store's");
}

function reaches(told: Stretch, log: LogState): Proof | null {
  if (log.salt !== told.salt) return lost(told.bytes);
  return log.committed < told.bytes ? lost(told.bytes - log.committed) : null;
}

function lost(bytes: number): Proof {
  return against("shortened", `${bytes} bytes of the log are lost`);
}

function against(reason: "changed" | "shortened", detail: string): Proof {
  return { proved: false, against: new StoreRefused(reason, undefined, detail), sums: null };
}
