import { chmodSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { app } from "electron";
import { wantsSelfCheck } from "./trouble/switches.ts";

/** The app's folders on this computer. */
export interface Folders {
  /** Holds the stores; one running app at a time. */
  readonly data: string;
  /** Holds the log. */
  readonly log: string;
  /** Holds rehearsals' stores while they last. */
  readonly rehearsals: string;
  /** The page and its files, as built. */
  readonly renderer: string;
  /** The demo's sheets: in the project and in the package alike, two folders above the built program. */
  readonly demo: string;
}

/**
 * Sets the folders: TAPELINE_DATA if set, otherwise the system's place for the app's data; for a self-check a folder of
 * its own. Must be called first of all: the single-instance lock lies there too.
 */
export function setupFolders(): Folders {
  const chosen = wantsSelfCheck() ? throwAwayFolder() : process.env.TAPELINE_DATA;
  if (chosen !== undefined && chosen !== "") app.setPath("userData", resolve(chosen));
  const data = app.getPath("userData");
  // Chromium's own files are kept apart from the stores.
  const browser = join(data, "browser");
  mkdirSync(browser, { recursive: true, mode: 0o700 });
  // A folder that somebody chose may have other uses; the program's own is private.
  if (chosen === undefined || chosen === "") chmodSync(data, 0o700);
  app.setPath("sessionData", browser);
  return {
    data,
    log: join(data, "logs"),
    rehearsals: join(data, "rehearsals"),
    renderer: join(import.meta.dirname, "../renderer"),
    demo: join(import.meta.dirname, "../../resources/demo"),
  };
}

/** Makes an empty folder that is removed when the program ends. */
function throwAwayFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-check-"));
  process.on("exit", () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}
