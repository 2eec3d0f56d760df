import { app } from "electron";

/**
 * Switches that would open the pages to other programs, weaken what guards them, or write what they load to a file.
 * A packaged program does not start with any of them. (Node's own, such as --inspect, are turned off by the fuses.)
 */
const refused = [
  "remote-debugging-port",
  "remote-debugging-pipe",
  "remote-debugging-address",
  "disable-web-security",
  "disable-site-isolation-trials",
  "allow-file-access-from-files",
  "allow-running-insecure-content",
  "ignore-certificate-errors",
  "load-extension",
  "disable-extensions-except",
  "js-flags",
  "log-net-log",
  "host-rules",
  "proxy-server",
] as const;

/** The refused switch that the program was started with, or undefined. Nothing is refused in development. */
export function refusedSwitch(): string | undefined {
  // By the words it was started with: Electron itself adds some of these where a fuse then holds them back.
  return app.isPackaged ? refused.find((name) => isGiven(name, process.argv)) : undefined;
}

/** Chromium reads one dash as two, and on Windows a slash as well. */
export function isGiven(name: string, words: readonly string[]): boolean {
  return words.some((word) => new RegExp(`^(?:--?|/)${name}(?:=|$)`, "i").test(word));
}

/** Whether the program was started to try itself out (`--self-check`). */
export function wantsSelfCheck(): boolean {
  return app.commandLine.hasSwitch("self-check");
}
