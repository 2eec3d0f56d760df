/** What the work below takes on the machine that all limits were set on, in ms. Measured on it when it did nothing else. */
const ordinaryUnitMs = 14;

/**
 * Does `work` and says how long it takes on an ordinary machine, in ms, whatever this one is and does besides: the time
 * of the processor that this thread spends on it, against what it spends here on work that never changes.
 * @throws what `work` throws
 */
export async function ordinaryMs(work: () => unknown): Promise<number> {
  const unit = unitMs();
  const before = process.threadCpuUsage();
  await work();
  return (cpuMs(before) * ordinaryUnitMs) / unit;
}

function cpuMs(since: NodeJS.CpuUsage): number {
  const { user, system } = process.threadCpuUsage(since);
  return (user + system) / 1000;
}

/** The least of several goes: the first ones are slower, before the engine has made its code fast. */
function unitMs(): number {
  const goes = Array.from({ length: 5 }, () => {
    const before = process.threadCpuUsage();
    doUnit();
    return cpuMs(before);
  });
  return Math.min(...goes);
}

/** Text, objects and numbers, as most of the program's work is. */
function doUnit(): void {
  const rows = Array.from({ length: 30_000 }, (_none, index) => ({ name: `row ${(index * 7919) % 30_011}` }));
  const read = JSON.parse(JSON.stringify(rows)) as typeof rows;
  read.sort((one, other) => (one.name < other.name ? -1 : 1));
}
