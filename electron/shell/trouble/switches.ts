import { app } from "electron";
import { refusedAmong } from "./refused-switches.ts";

/** Returns the refused switch that the packaged program was started with, or undefined. Development refuses none. */
export function refusedSwitch(): string | undefined {
  // By the original words: Electron itself adds some of these switches, which a fuse then stops.
  return app.isPackaged ? refusedAmong(process.argv, process.getuid?.() === 0) : undefined;
}

/** True if the program was started to check itself (`--self-check`). */
export function wantsSelfCheck(): boolean {
  return app.commandLine.hasSwitch("self-check");
}
