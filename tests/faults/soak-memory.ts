import type { ElectronApplication, Page } from "@playwright/test";

/** Memory at one moment, in MB: what pages hold once what nobody needs is thrown away, and what processes take. */
export interface Held {
  /** Heap of each page, the desk's first, then the board's. */
  readonly heaps: readonly number[];
  readonly mainHeap: number;
  /** Working sets of all processes of the program. */
  readonly processes: number;
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
    const rest = await app.evaluate(({ app: program }) => ({
      mainHeap: process.memoryUsage().heapUsed,
      kilobytes: program.getAppMetrics().reduce((sum, { memory }) => sum + memory.workingSetSize, 0),
    }));
    return { heaps, mainHeap: rest.mainHeap / megabyte, processes: rest.kilobytes / 1024 };
  };
}

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
    compare("all processes", ({ processes }) => processes),
  ];
}
