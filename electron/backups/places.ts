import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { backupName, type NamedBackup } from "../domain/backups/names.ts";
import type { BackupHeader, BackupSettings } from "../domain/backups/records.ts";
import type { Sentence } from "../domain/words.ts";
import type { Lock } from "./cipher.ts";
import { packBackup } from "./file.ts";
import { backupsIn, dropUnfinished, forgetBackups, headersIn, placeBackup, tidyBackups } from "./folder.ts";
import { lockOf } from "./settings.ts";
import { whyNotMade } from "./trouble.ts";

/** Where backups go: beside the store, always; and a second folder or stick, where the organiser chose one. */
export type PlaceKind = "own" | "second";

export interface BackupPlace {
  readonly kind: PlaceKind;
  readonly folder: string;
  /** What locks them there. Beside the open store a lock would keep nobody out, and somebody from their own backup. */
  readonly lock: Lock | null;
}

/** What is known of a place since the program started. */
export interface PlaceNews {
  /** The newest backup there; null when there is none (or it is not there). */
  readonly last: { readonly at: string; readonly number: number; readonly sha256: string } | null;
  /** Why the last try failed; null when it did not. */
  readonly trouble: Sentence | null;
}

/** The folder made inside the one that was chosen. It is also how a stick is known again: it is on the stick alone. */
const secondFolderName = "Tapeline backups";

/** The folder of backups beside a store. */
export function ownBackups(store: string): string {
  return join(dirname(store), "backups");
}

/** The file beside a store that says what was decided about its backups. */
export function settingsBeside(store: string): string {
  return join(dirname(store), "backups.json");
}

export function backupPlaces(ownFolder: string, settings: BackupSettings): BackupPlace[] {
  const own: BackupPlace = { kind: "own", folder: ownFolder, lock: null };
  if (settings.second === null) return [own];
  return [own, { kind: "second", folder: settings.second, lock: lockOf(settings) }];
}

/** Which backups hold somebody who was erased: they go once their place is reached, and nobody goes back to them. */
export function forgottenBy({ source, forgetUpTo }: BackupSettings): (backup: NamedBackup) => boolean {
  return (backup) => backup.source === source && backup.number <= forgetUpTo;
}

/** Whether a place can be reached: a stick that is not plugged in can't. */
export function isThere({ kind, folder }: BackupPlace): boolean {
  return kind === "own" || existsSync(folder);
}

/** Makes the folder for the second backups inside the one that was chosen. @throws the system's error */
export async function makeSecond(chosen: string): Promise<string> {
  const folder = chosen.endsWith(secondFolderName) ? chosen : join(chosen, secondFolderName);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  return folder;
}

/** What lies in a place now. */
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

/** The highest number of this source's backups in places that can be reached. */
export async function highestNumber(places: readonly BackupPlace[], source: string): Promise<number> {
  const all = await Promise.all(
    places.filter(isThere).map(({ folder }) => backupsIn(folder).catch(() => [])),
  );
  return Math.max(0, ...all.flat().flatMap((each) => (each.source === source ? [each.number] : [])));
}

export interface ToPlace {
  readonly store: Buffer;
  readonly number: number;
  readonly source: string;
  readonly at: string;
  readonly holding: BackupHeader["holding"];
  /** `YYYY-MM-DDTHH:MM` where the computer is. */
  readonly clock: string;
  /** Backups up to this number hold somebody who was erased. */
  readonly forgetUpTo: number;
}

/** Writes one backup to one place, and tidies there. Never throws: what went wrong is told. */
export async function backUpTo(place: BackupPlace, made: ToPlace): Promise<PlaceNews> {
  const { store, number, source, at, holding, clock } = made;
  try {
    const bytes = await packBackup(store, { number, source, at, holding }, place.lock);
    const opener = place.lock === null ? null : { lock: place.lock };
    await placeBackup(place.folder, backupName({ source, number }, clock), bytes, opener);
    const [today = ""] = clock.split("T");
    await tidyBackups(place.folder, source, today);
    if (made.forgetUpTo > 0) await forgetBackups(place.folder, source, made.forgetUpTo);
    await dropUnfinished(place.folder);
    const news = await placeNews(place, source);
    return news;
  } catch (error) {
    console.error(`No backup could be made in ${place.folder}:`, error);
    const { last } = await placeNews(place, source);
    return { last, trouble: whyNotMade(error) };
  }
}

/** `YYYY-MM-DDTHH:MM` where the computer is. */
export function localMinute(now: Date): string {
  const two = (value: number) => String(value).padStart(2, "0");
  const date = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  return `${date}T${two(now.getHours())}:${two(now.getMinutes())}`;
}
