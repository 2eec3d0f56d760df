import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { Desk } from "../api/door/desk.ts";
import { createDesk, type DeskParts, type KeptLanguage } from "../api/make-desk.ts";
import { createCalculator } from "../host/calculator.ts";
import { unpredictable } from "../host/chance.ts";
import { monotonic } from "../host/monotonic.ts";
import { storeOpener } from "../host/stores.ts";

/** A desk with a store in its own folder. */
export interface TemporaryDesk {
  readonly desk: Desk;
  /** Removes everything: it holds people's names. */
  remove(): void;
}

/** The place for a rehearsal's store while it lasts. */
export interface Ground {
  /** The parent folder of the rehearsals' own folders; made if missing. */
  readonly folder: string;
  /** The library for a runtime that needs its own build of it. */
  readonly nativeBinding: string | undefined;
  readonly demoSheets: DeskParts["demoSheets"];
  /** The language of the sheet of rows not imported; English by default. */
  readonly language?: KeptLanguage;
  /** The file of the thread for long calculations, where it is not beside the sources. */
  readonly threadFile?: string;
}

/** Makes a desk for one rehearsal, with its clock stopped at `now`. */
export function temporaryDesk(
  { folder: parent, nativeBinding, demoSheets, language, threadFile }: Ground,
  now: Date,
): TemporaryDesk {
  mkdirSync(parent, { recursive: true, mode: 0o700 });
  const folder = mkdtempSync(join(parent, "tapeline-rehearsal-"));
  const removeFolder = () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  try {
    const open = storeOpener(folder, nativeBinding);
    const clocks = { now: () => now, monotonic, random: unpredictable };
    const calculator = createCalculator(threadFile);
    const parts = { ...clocks, open, demoSheets, calculator, rehearsal: true };
    const desk = createDesk({ ...parts, ...(language && { language }) });
    function remove(): void {
      desk.close();
      removeFolder();
    }
    return { desk, remove };
  } catch (error) {
    removeFolder();
    throw error;
  }
}

/** Returns the moment of a rehearsal: now, or this time of day on another date (ISO 8601). */
export function momentOf(date: string | null, now: Date): Date {
  if (date === null) return now;
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const moment = new Date(now);
  moment.setFullYear(year, month - 1, day);
  return moment;
}
