import { existsSync, readdirSync, readFileSync } from "node:fs";

/** What a process is, of those that the bench and all below it started. */
type Kind = "table" | "table's windows" | "their drawing" | "browser" | "browser's pages" | "bench";

/** Seconds of processor time since their start, by kind of process. Only Linux tells (proc(5)). */
export type Seconds = Readonly<Record<Kind, number>>;

const ticksPerSecond = 100;

interface Process {
  readonly id: number;
  readonly parent: number;
  readonly ticks: number;
  readonly line: string;
}

/** @param tableId the process in which the table's store and server are */
export function secondsOf(tableId: number): Seconds {
  const seconds = {
    table: 0,
    "table's windows": 0,
    "their drawing": 0,
    browser: 0,
    "browser's pages": 0,
    bench: 0,
  };
  for (const each of descendants()) seconds[kindOf(each, tableId)] += each.ticks / ticksPerSecond;
  return seconds;
}

/** What a process takes of its own, and of no file that it shares with others, in MB; NaN where the system does not tell. */
export function ownMegabytes(id: number): number {
  const file = `/proc/${id}/status`;
  if (!existsSync(file)) return Number.NaN;
  return Number(/^RssAnon:\s*(\d+) kB$/m.exec(readFileSync(file, "utf8"))?.[1]) / 1024;
}

function kindOf({ id, line }: Process, tableId: number): Kind {
  const isPage = line.includes("--type=renderer");
  if (id === tableId) return "table";
  if (/^\S*chromium/.test(line)) return isPage ? "browser's pages" : "browser";
  // Without a graphics processor, the process that is named after it puts the windows' pictures together.
  if (/electron/i.test(line))
    return line.includes("--type=gpu-process") ? "their drawing" : "table's windows";
  return "bench";
}

function descendants(): Process[] {
  if (!existsSync("/proc/self/stat")) return [];
  const all = readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .flatMap(processOf);
  const ours = new Set([process.pid]);
  // Ids mostly rise from parents to children, and wrap around now and then.
  for (let before = 0; before < ours.size; ) {
    before = ours.size;
    for (const { id, parent } of all) if (ours.has(parent)) ours.add(id);
  }
  return all.filter(({ id }) => ours.has(id));
}

/** Nothing for a process that has ended meanwhile. */
function processOf(name: string): Process[] {
  try {
    const stat = readFileSync(`/proc/${name}/stat`, "utf8");
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const line = readFileSync(`/proc/${name}/cmdline`, "utf8").replaceAll("\0", " ");
    const ticks = Number(fields[11]) + Number(fields[12]);
    return [{ id: Number(name), parent: Number(fields[1]), ticks, line }];
  } catch {
    return [];
  }
}
