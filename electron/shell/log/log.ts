import { existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import log from "electron-log/node.js";
import { type LogEvent, lineOf } from "./log-line.ts";

/** The log of the program: short lines in a few files of bounded size. */
export interface Log {
  /** Adds a line at once. Never throws: a full or missing disk must not stop the day. */
  note(event: LogEvent): void;
  /** Returns the files and their text, newest first. */
  files(): readonly { readonly name: string; readonly text: string }[];
}

/** With its {@link olderFiles}, a log takes 1 MB at most. */
const largestFile = 256 * 1024;
const olderFiles = 3;
/** Most lines per minute, for a fault that comes back with every frame; the rest is counted. */
const mostLinesAMinute = 120;

/** Opens the log in `folder`. `now` is the wall clock, which labels lines. */
export function openLog(folder: string, now: () => Date): Log {
  const file = join(folder, "tapeline.log");
  const write = writer(folder, file);
  const minute = { began: Number.NEGATIVE_INFINITY, lines: 0, leftOut: 0 };

  function note(event: LogEvent): void {
    const at = now();
    // In both directions: the wall clock may have been set back.
    if (Math.abs(at.getTime() - minute.began) >= 60_000) {
      if (minute.leftOut > 0) write(lineOf({ what: "left-out", lines: minute.leftOut }, at));
      Object.assign(minute, { began: at.getTime(), lines: 0, leftOut: 0 });
    }
    minute.lines += 1;
    if (minute.lines > mostLinesAMinute) minute.leftOut += 1;
    else write(lineOf(event, at));
  }

  function files(): { name: string; text: string }[] {
    return ["tapeline.log", ...olderNames()]
      .filter((name) => existsSync(join(folder, name)))
      .map((name) => ({ name, text: readFileSync(join(folder, name), "utf8") }));
  }

  return { note, files };
}

function olderNames(): string[] {
  return Array.from({ length: olderFiles }, (_each, index) => `tapeline.${index + 1}.log`);
}

function writer(folder: string, file: string): (line: string) => void {
  // An instance of its own, without the library's own collecting (console, other processes).
  const logger = log.create({ logId: file });
  logger.transports.console.level = false;
  const { file: transport } = logger.transports;
  transport.resolvePathFn = () => file;
  transport.maxSize = largestFile;
  transport.writeOptions = { flag: "a", mode: 0o600, encoding: "utf8" };
  transport.format = ({ data }) => data;
  transport.archiveLogFn = () => moveOn(folder);
  return (line) => {
    try {
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      logger.info(line);
    } catch {
      // Without a log there is no place to report that.
    }
  };
}

/** Renames each file to the next older one; the oldest is deleted. */
function moveOn(folder: string): void {
  const names = ["tapeline.log", ...olderNames()];
  for (const [index, older] of [...names.entries()].reverse()) {
    const newer = names[index - 1];
    if (newer !== undefined && existsSync(join(folder, newer)))
      renameSync(join(folder, newer), join(folder, older));
  }
}
