import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createDesk, type Desk } from "../api/desk.ts";
import { unpredictable } from "../chance.ts";
import { demoSheetsIn } from "../demo-sheets.ts";
import { monotonic } from "../monotonic.ts";
import { storeOpener } from "../stores.ts";

/** A desk on a store in a folder of its own. */
export interface TemporaryDesk {
  readonly desk: Desk;
  /** Removes everything: it holds people's names. */
  remove(): void;
}

/** A desk for one rehearsal, whose clock stands at `now`. */
export function temporaryDesk(now: Date): TemporaryDesk {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-rehearsal-"));
  const removeFolder = () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  try {
    const demoSheets = demoSheetsIn(join(import.meta.dirname, "../../resources/demo"));
    const open = storeOpener(folder, undefined);
    const clocks = { now: () => now, monotonic, random: unpredictable };
    const desk = createDesk({ ...clocks, open, demoSheets, rehearsal: true });
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

/** The moment of a rehearsal: now, or this time of day on another date (ISO 8601). */
export function momentOf(date: string | null, now: Date): Date {
  if (date === null) return now;
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const moment = new Date(now);
  moment.setFullYear(year, month - 1, day);
  return moment;
}
