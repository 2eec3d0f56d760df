import { statfs } from "node:fs/promises";
import { freemem, totalmem } from "node:os";
import { app, screen } from "electron";
import type { Desk } from "../../api/door/desk.ts";
import { factsOf } from "../../store/connection/facts.ts";
import type { ReportFile } from "../bridge/bridge-types.ts";
import { blockedRequests } from "../scheme/guard.ts";
import type { Log } from "./log.ts";
import { systemNumber } from "./log-watch.ts";

interface ReportParts {
  readonly desk: Desk;
  readonly log: Log;
  /** The folder of the stores. */
  readonly data: string;
}

const mebibyte = 1024 * 1024;

/**
 * Makes the files of a report for help, as they would be written: the program and its system, the store's state, and
 * the log. No personal data, no results, no path and no name of the computer. Nothing is sent anywhere.
 */
export async function reportFiles({ desk, log, data }: ReportParts): Promise<ReportFile[]> {
  return [
    { name: "about.json", text: written(await aboutProgram(desk, data)) },
    { name: "store.json", text: written(aboutStore(desk)) },
    ...log.files(),
  ];
}

async function aboutProgram(desk: Desk, data: string): Promise<object> {
  const primary = screen.getPrimaryDisplay().id;
  return {
    made: new Date().toISOString(),
    program: {
      version: app.getVersion(),
      packaged: app.isPackaged,
      requestsBlocked: blockedRequests().count,
    },
    runtime: {
      electron: process.versions.electron,
      chromium: process.versions.chrome,
      node: process.versions.node,
      sandbox: !app.commandLine.hasSwitch("no-sandbox"),
    },
    system: {
      platform: process.platform,
      version: systemNumber(),
      processor: process.arch,
      language: app.getLocale(),
      memoryMiB: { all: mebibytes(totalmem()), free: mebibytes(freemem()) },
      freeOnDiskMiB: await freeOnDisk(data),
    },
    network: aboutNetwork(desk),
    displays: screen.getAllDisplays().map(({ id, size, scaleFactor, displayFrequency }) => ({
      ...size,
      scale: scaleFactor,
      hertz: displayFrequency,
      primary: id === primary,
    })),
  };
}

/** Whether something listens now, and for how many; no address, no key and no name of a device. */
function aboutNetwork({ network }: Desk): object {
  const view = network?.view();
  return {
    listens: view !== undefined && view.on !== null,
    port: view?.on?.port ?? null,
    networks: view?.addresses.length ?? 0,
    devices: view?.devices.length ?? 0,
    connections: network?.connections() ?? 0,
  };
}

function aboutStore(desk: Desk): object {
  return { inUse: desk.kind, ...factsOf(desk.store.db) };
}

async function freeOnDisk(folder: string): Promise<number | null> {
  try {
    const { bavail, bsize } = await statfs(folder);
    return mebibytes(bavail * bsize);
  } catch {
    // A disk that does not answer is just what the report is for.
    return null;
  }
}

function mebibytes(bytes: number): number {
  return Math.round(bytes / mebibyte);
}

function written(facts: object): string {
  return `${JSON.stringify(facts, null, 2)}\n`;
}
