import { existsSync, statSync } from "node:fs";
import { writeWholeText } from "../../files/through.ts";
import { anyBackupIn } from "../keeping/backups-beside.ts";
import { firstPageOf } from "../keeping/laid-over.ts";
import { checkLog } from "../keeping/log-check.ts";
import type { PageSums } from "../keeping/page-sums.ts";
import { type Proof, proofOf } from "../keeping/proof.ts";
import { doubtFile, logFile, sealFile, tallyFile } from "../keeping/seal.ts";
import { finishRestore } from "../keeping/set-aside.ts";
import { migrations } from "../migrations/list.ts";
import { findDamage, findWrongMark, type Told } from "./checks.ts";
import { asRefusal, connectToRead, type StoreLocation, withReading } from "./connect.ts";
import type { Database } from "./database.ts";
import { StoreRefused } from "./refused.ts";

/** Marks a SQLite file as ours ("Tape" in ASCII), so that we never write to another program's file. */
export const applicationId = 0x54617065;

/** The number of marks scored again at a start: a sample if the file's seal is valid, all if nothing is proved. */
export const sampleOfMarks = 200;
const allMarks = 1e9;

/** What an examination found; it can be handed from one thread to another. */
export interface Examined {
  readonly is: "store" | "nothing";
  /** The sums of the pages that the seal proved, for the guard; null where it proved none. */
  readonly sums: PageSums | null;
  /** True where the seal proved every byte and the content is still to be looked at (`lookAgain`). */
  readonly toLookAgain: boolean;
}

interface How {
  /** Leaves the content of a file for later that its seal proves and that this version wrote. */
  readonly trustSeal: boolean;
  /** Hears how far it is. */
  readonly told: Told;
}

const nothing: Examined = { is: "nothing", sums: null, toLookAgain: false };

/**
 * Checks a store that nothing has open, without writing to it: whether it is ours, its version, its integrity, and that it is
 * unchanged since it was closed. Where there is no file, there must never have been one. A restore that a crash interrupted is
 * finished first.
 * @throws StoreRefused
 */
export function examine(location: StoreLocation, how?: How): Examined {
  const { file } = location;
  finishRestore(file);
  const there = statSync(file, { throwIfNoEntry: false });
  if (there?.isDirectory() === true) throw new Error(`${file} is a folder`);
  // A file of no bytes: SQLite's own checks would call it whole.
  if ((there?.size ?? 0) === 0) return nothingThere(location);
  const proof = judged(file, there?.size ?? 0, how?.told);
  if (how?.trustSeal === true && proof.proved && !existsSync(doubtFile(file)) && isAsWeWrite(file)) {
    return { is: "store", sums: proof.sums, toLookAgain: true };
  }
  try {
    if (!lookInside(location, proof, how?.told)) return nothingThere(location);
  } catch (error) {
    if (error instanceof StoreRefused) error.doubted = proof.against !== null;
    throw error;
  }
  if (proof.against !== null && location.accepted !== true) throw proof.against;
  return { is: "store", sums: proof.sums, toLookAgain: false };
}

/**
 * Looks at the content of a store that is in use, whose seal was proved when it was opened: what is found now is a fault of
 * this program and not of the disk. Returns the damage as a line for the log, and notes beside the store that no later start
 * may trust the seal alone; null where there is none. It reads by a connection of its own, which holds up checkpoints while
 * it lasts.
 */
export function lookAgain(location: StoreLocation): string | null {
  const db = connectToRead(location);
  try {
    const damage = findDamage(db) ?? findWrongMark(db, sampleOfMarks);
    if (damage !== null) writeWholeText(doubtFile(location.file), damage);
    return damage;
  } finally {
    db.close();
  }
}

function judged(file: string, bytes: number, told: Told | undefined): Proof {
  // Most seals hold.
  const read = (done: number) => told?.({ step: "bytes", done, total: bytes, fewMarks: true });
  read(0);
  try {
    return proofOf(file, read);
  } catch (error) {
    throw asRefusal(error);
  }
}

/** True where the file's header has our sign and this version ("The Database File Format", 1.3, sqlite.org/fileformat2.html). */
function isAsWeWrite(file: string): boolean {
  const header = firstPageOf(file, checkLog(logFile(file)));
  if (header.length < 100) return false;
  return header.readUInt32BE(68) === applicationId && header.readUInt32BE(60) === migrations.length;
}

/** @throws StoreRefused where anything shows that there was a store: a lost one is never silently replaced. */
function nothingThere({ file, backups, accepted }: StoreLocation): Examined {
  const parts = [sealFile(file), tallyFile(file), logFile(file)];
  if (parts.some((part) => existsSync(part))) throw new StoreRefused("gone");
  if (accepted !== true && backups !== undefined && anyBackupIn(backups)) throw new StoreRefused("gone");
  return nothing;
}

/** Checks a store's content. Returns false where nothing was ever written into the file. */
function lookInside(location: StoreLocation, { proved }: Proof, told: Told | undefined): boolean {
  return withReading(location, (db) => {
    if (isUnborn(db)) return false;
    requireOurs(db);
    const tell: Told = (at) => told?.({ ...at, fewMarks: proved });
    const damage = findDamage(db, tell) ?? findWrongMark(db, proved ? sampleOfMarks : allMarks, tell);
    if (damage !== null) throw new StoreRefused("damaged", undefined, damage);
    return true;
  });
}

/** True for an empty, unclaimed database: left by a first start that a full disk or a power cut ended. */
function isUnborn(db: Database): boolean {
  // SQLite takes a file too short to be a database for an empty one; it is somebody else's file.
  if (Number(db.pragma("page_count", { simple: true })) === 0) return false;
  const [id, version] = ["application_id", "user_version"].map((name) => db.pragma(name, { simple: true }));
  const sql = "SELECT count(*) AS count FROM sqlite_schema";
  return id === 0 && version === 0 && db.prepare<[], { count: number }>(sql).get()?.count === 0;
}

/** @throws StoreRefused when the file is another program's or a newer version's. */
export function requireOurs(db: Database): void {
  const version = Number(db.pragma("user_version", { simple: true }));
  if (db.pragma("application_id", { simple: true }) !== applicationId) throw new StoreRefused("foreign");
  if (version > migrations.length) throw new StoreRefused("newer", { version, known: migrations.length });
}
