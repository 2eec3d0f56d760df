import { app, type WebContents } from "electron";
import { blockedRequests } from "../scheme/guard.ts";
import type { Log } from "./log.ts";
import { bareName, faultOf } from "./log-fault.ts";
import { type LogEvent, lineOf } from "./log-line.ts";
import { logPlaceOf } from "./log-place.ts";

/** Logs every fault in the program from now on. Must be called before the app is ready. */
export function watchForFaults(log: Log): void {
  watchMain(log);
  app.on("web-contents-created", (_event, contents) => watchPage(log, contents));
  app.on("browser-window-created", (_event, window) => {
    window.on("unresponsive", () =>
      log.note({ what: "page-hung", ...logPlaceOf(window.webContents.getURL()) }),
    );
  });
  app.on("child-process-gone", (_event, { type, reason, exitCode }) =>
    log.note({ what: "process-gone", type: type.replaceAll(" ", "_"), reason, code: exitCode }),
  );
  app.once("will-quit", () => log.note({ what: "ended", blocked: blockedRequests().count }));
}

/** Logs the start: the program, the system, and the active guards. */
export function noteStart(log: Log): void {
  const sandbox = !app.commandLine.hasSwitch("no-sandbox");
  log.note({
    what: "started",
    version: app.getVersion(),
    electron: process.versions.electron,
    system: process.platform,
    release: systemNumber(),
    processor: process.arch,
    packaged: app.isPackaged,
    sandbox,
  });
}

/** Returns the system's version number, without any suffix of its builder. */
export function systemNumber(): string {
  return /^[\d.]*\d/.exec(process.getSystemVersion())?.[0] ?? "";
}

/**
 * Keeps the program running after an uncaught fault, as Electron does by itself, but without a box over the desk: saved
 * data is safe, and each request is independent.
 */
function watchMain(log: Log): void {
  process.on("uncaughtException", (error) => tell("main", error));
  process.on("unhandledRejection", (error) => tell("promise", error));
  const print = console.error;
  console.error = (...said: readonly unknown[]) =>
    tell(
      "console",
      said.find((each) => each instanceof Error),
      said,
    );

  function tell(
    where: "main" | "promise" | "console",
    error: unknown,
    said: readonly unknown[] = [error],
  ): void {
    const event = { what: "fault", where, ...faultOf(error) } as const;
    log.note(event);
    // Printed text may end up in the system's own log, so a packaged program prints only that line.
    if (app.isPackaged) print(lineOf(event, new Date()));
    else print(...said);
  }
}

function watchPage(log: Log, contents: WebContents): void {
  contents.on("render-process-gone", (_event, { reason }) =>
    log.note({ what: "page-gone", ...logPlaceOf(contents.getURL()), reason }),
  );
  contents.on("console-message", (...told: readonly unknown[]) => {
    const event = pageError(told, contents.getURL());
    if (event !== undefined) log.note(event);
  });
}

/** Reads a page's error. Since Electron 35 the first value holds everything; before, the others did. */
function pageError(told: readonly unknown[], url: string): LogEvent | undefined {
  const [details, level, message, line, source] = told;
  const { level: ownLevel, message: ownMessage, lineNumber, sourceId } = details as Record<string, unknown>;
  if (ownLevel !== "error" && level !== 3) return undefined;
  const text = String(ownMessage ?? message);
  return {
    what: "page-error",
    ...logPlaceOf(url),
    error: /\b(?:[A-Z][A-Za-z]*)?(?:Error|Exception)\b/.exec(text)?.[0] ?? "other",
    at: `${bareName(String(sourceId ?? source))}:${String(lineNumber ?? line)}`,
  };
}
