import { app } from "electron";
import { refusedAmong } from "./refused-switches.ts";

/** The refused switch that the packaged program was started with, or undefined. Nothing is refused in development. */
export function refusedSwitch(): string | undefined {
  // By the words it was started with: Electron itself adds some of these where a fuse then holds them back.
  return app.isPackaged ? refusedAmong(process.argv, process.getuid?.() === 0) : undefined;
}

/** Whether the program was started to try itself out (`--self-check`). */
export function wantsSelfCheck(): boolean {
  return app.commandLine.hasSwitch("self-check");
}
