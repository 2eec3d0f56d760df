import { existsSync, readFileSync } from "node:fs";
import type { ElectronApplication, Page } from "@playwright/test";

/** Memory at one moment, in MB: what pages hold once what nobody needs is thrown away, and what processes take. */
export interface Held {
  /** Heap of each page, the desk's first, then the board's. */
  readonly heaps: readonly number[];
  readonly mainHeap: number;
  /**
   * What the main process, the pages' processes and all others take of their own. The pages' say little here: whoever
   * drives them by the browser's tools makes them keep every answer. Without, the board stayed at some 30 MB.
   */
  readonly main: number;
  readonly tabs: number;
  readonly others: number;
}

const megabyte = 1024 * 1024;

/** Makes what looks at the memory of these pages and of the program. */
export async function held(app: ElectronApplication, pages: readonly Page[]): Promise<() => Promise<Held>> {
  const tools = await Promise.all(pages.map((page) => page.context().newCDPSession(page)));
  for (const each of tools) await each.send("Performance.enable");
  return async () => {
    const heaps: number[] = [];
    for (const each of tools) {
      for (let round = 0; round < 2; round += 1) await each.send("HeapProfiler.collectGarbage");
      const { metrics } = await each.send("Performance.getMetrics");
      heaps.push((metrics.find(({ name }) => name === "JSHeapUsedSize")?.value ?? Number.NaN) / megabyte);
    }
    const rest = await ofProgram(app);
    const of = (is: (type: string) => boolean) =>
      rest.processes.filter(({ type }) => is(type)).reduce((sum, each) => sum + ownKilobytes(each), 0) / 1024;
    return {
      ...{ heaps, mainHeap: rest.mainHeap / megabyte, main: of((type) => type === "Browser") },
      tabs: of((type) => type === "Tab"),
      others: of((type) => type !== "Browser" && type !== "Tab"),
    };
  };
}

interface OfProgram {
  readonly mainHeap: number;
  readonly processes: readonly { readonly pid: number; readonly type: string; readonly kilobytes: number }[];
}

/** Asks again when the answer was lost on the way: the main process may collect the promise that carries it. */
async function ofProgram(app: ElectronApplication, tries = 3): Promise<OfProgram> {
  try {
    return await app.evaluate(({ app: program }) => ({
      mainHeap: process.memoryUsage().heapUsed,
      processes: program
        .getAppMetrics()
        .map(({ pid, type, memory }) => ({ pid, type, kilobytes: memory.workingSetSize })),
    }));
  } catch (error) {
    if (tries > 1 && String(error).includes("promise was garbage collected"))
      return ofProgram(app, tries - 1);
    throw error;
  }
}

/** Where the system tells it, what is a process's own and no file or picture that it shares with others. */
function ownKilobytes({ pid, kilobytes }: { readonly pid: number; readonly kilobytes: number }): number {
  const file = `/proc/${pid}/status`;
  if (!existsSync(file)) return kilobytes;
  return Number(/^RssAnon:\s*(\d+) kB$/m.exec(readFileSync(file, "utf8"))?.[1] ?? kilobytes);
}

/** What must stay flat. */
export const judged = ["heaps of all pages", "the main process"] as const;

interface Grown {
  readonly what: string;
  readonly first: number;
  readonly last: number;
}

/** The least of the first quarter's samples against the least of the last's: what lies above it is not yet collected. */
export function grownBy(samples: readonly Held[]): Grown[] {
  const quarter = Math.max(1, Math.floor(samples.length / 4));
  const compare = (what: string, of: (sample: Held) => number): Grown => ({
    what,
    first: Math.min(...samples.slice(0, quarter).map(of)),
    last: Math.min(...samples.slice(-quarter).map(of)),
  });
  const names = ["the desk", "the board", "the push-up station", "the leap's station", "people", "check-in"];
  return [
    ...names.map((name, index) => compare(`heap of ${name}`, ({ heaps }) => heaps[index] ?? Number.NaN)),
    compare("heap of the main process (not collected)", ({ mainHeap }) => mainHeap),
    compare("the pages' processes", ({ tabs }) => tabs),
    compare("other processes", ({ others }) => others),
    compare(judged[0], ({ heaps }) => heaps.reduce((sum, heap) => sum + heap, 0)),
    compare(judged[1], ({ main }) => main),
  ];
}
