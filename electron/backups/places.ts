import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { backupName, type NamedBackup } from "../domain/backups/names.ts";
import type { BackupHeader, BackupSettings } from "../domain/backups/records.ts";
import type { Sentence } from "../domain/words.ts";
import type { Lock } from "./cipher.ts";
import type { CheckedCopy } from "./copy.ts";
import { backupsIn, dropUnfinished, forgetBackups, headersIn, placeBackup, tidyBackups } from "./folder.ts";
import { lockOf } from "./settings.ts";
import { whyNotMade } from "./trouble.ts";
import type { BackupWork } from "./work.ts";

/** The place of backups: always beside the store; and a second folder or stick, if the organiser chose one. */
export type PlaceKind = "own" | "second";

export interface BackupPlace {
  readonly kind: PlaceKind;
  readonly folder: string;
  /** The lock of backups there. Beside the open store it would keep out only somebody from their own backup. */
  readonly lock: Lock | null;
}

/** The news of a place since the program started. */
export interface PlaceNews {
  /** The newest backup there; null without one (or without the place). */
  readonly last: { readonly at: string; readonly number: number; readonly sha256: string } | null;
  /** The reason why the last try failed; null if it did not. */
  readonly trouble: Sentence | null;
}

/** The folder made inside the chosen one. It also identifies a stick: the folder exists only there. */
const secondFolderName = "Tapeline backups";

/** Returns the folder of backups beside a store. */
export function ownBackups(store: string): string {
  return join(dirname(store), "backups");
}

/** Returns the file beside a store with its backup settings. */
export function settingsBeside(store: string): string {
  return join(dirname(store), "backups.json");
}

export function backupPlaces(ownFolder: string, settings: BackupSettings): BackupPlace[] {
  const own: BackupPlace = { kind: "own", folder: ownFolder, lock: null };
  if (settings.second === null) return [own];
  return [own, { kind: "second", folder: settings.second, lock: lockOf(settings) }];
}

/** Returns a test for backups that hold somebody erased: never restored, and deleted where their place is reached. */
export function forgottenBy({ source, forgetUpTo }: BackupSettings): (backup: NamedBackup) => boolean {
  return (backup) => backup.source === source && backup.number <= forgetUpTo;
}

/** True if a place can be reached: an unplugged stick can't. */
export function isThere({ kind, folder }: BackupPlace): boolean {
  return kind === "own" || existsSync(folder);
}

/** Makes the folder for second backups inside the chosen one. @throws the system's error */
export async function makeSecond(chosen: string): Promise<string> {
  const folder = chosen.endsWith(secondFolderName) ? chosen : join(chosen, secondFolderName);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  return folder;
}

/** Reads a place's newest backup. */
export async function placeNews(place: BackupPlace, source: string): Promise<PlaceNews> {
  if (!isThere(place)) return { last: null, trouble: null };
  try {
    const found = (await headersIn(place.folder)).find(
      (each) => each.source === source && each.header !== null,
    );
    const header = found?.header ?? null;
    return { last: header === null ? null : lastOf(header), trouble: null };
  } catch (error) {
    return { last: null, trouble: whyNotMade(error) };
  }
}

function lastOf({ at, number, sha256 }: BackupHeader): NonNullable<PlaceNews["last"]> {
  return { at, number, sha256 };
}

/** Returns the highest number of this source's backups in reachable places. */
export async function highestNumber(places: readonly BackupPlace[], source: string): Promise<number> {
  const all = await Promise.all(
    places.filter(isThere).map(({ folder }) => backupsIn(folder).catch(() => [])),
  );
  return Math.max(0, ...all.flat().flatMap((each) => (each.source === source ? [each.number] : [])));
}

export interface ToPlace {
  readonly from: CheckedCopy;
  readonly networkKey: string | null;
  readonly number: number;
  readonly source: string;
  readonly at: string;
  /** Local time, `YYYY-MM-DDTHH:MM`. */
  readonly clock: string;
  /** Backups up to this number hold somebody erased. */
  readonly forgetUpTo: number;
}

/** Lets one backup be written to one place, and tidies there. Never throws: failures are in the news. */
export async function backUpTo(
  place: BackupPlace,
  made: ToPlace,
  pack: BackupWork["pack"],
): Promise<PlaceNews> {
  const { number, source, at, clock, networkKey } = made;
  const { file, bytes, sha256, holding } = made.from;
  const facts = { number, source, at, holding };
  const toPack = { from: { file, bytes, sha256 }, networkKey, facts, lock: place.lock };
  try {
    const write = (unfinished: string) => pack(unfinished, toPack);
    await placeBackup(place.folder, backupName({ source, number }, clock), write);
    const [today = ""] = clock.split("T");
    await tidyBackups(place.folder, source, today);
    if (made.forgetUpTo > 0) await forgetBackups(place.folder, source, made.forgetUpTo, file);
    await dropUnfinished(place.folder, file);
    const news = await placeNews(place, source);
    return news;
  } catch (error) {
    console.error(`No backup could be made in ${place.folder}:`, error);
    const { last } = await placeNews(place, source);
    return { last, trouble: whyNotMade(error) };
  }
}

/** Returns local time as `YYYY-MM-DDTHH:MM`. */
export function localMinute(now: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const date = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${date}T${two(now.getHours())}:${two(now.getMinutes())}`;
}
