import { loadavg } from "node:os";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { athletes } from "./soak-day.ts";
import { grownBy, type Held, judged } from "./soak-memory.ts";

/** One entry: when it was to be sent, when it was, and when it was answered; all by one clock, in ms. */
export interface Timed {
  readonly planned: number;
  readonly sent: number;
  readonly answered: number;
}

/** All that was seen of a soak. */
export interface Soaked {
  readonly seconds: number;
  readonly times: readonly Timed[];
  /** When the board had painted each count of tests done. */
  readonly painted: readonly { readonly count: number; readonly at: number }[];
  readonly samples: readonly Held[];
  /** What pages complained of, the program's own log, and what it printed. */
  readonly errors: readonly string[];
  readonly log: string;
  readonly printed: string;
}

/** More is no longer flat: the day itself grows from no marks to all of them, and a process by what it has spare. */
const mayGrow = { share: 0.1, megabytes: 32 };

/** Tells the figures; whether all was painted, memory stayed flat and nobody complained. Times alone judge nothing. */
export function tell(soaked: Soaked): boolean {
  const { seconds, times } = soaked;
  const busy = loadavg().map((each) => each.toFixed(1));
  console.log(
    `${times.length} entries of ${athletes} athletes in ${seconds} s, 6 windows; load ${busy.join(" ")}`,
  );
  const missing = tellTimes(soaked);
  const isFlat = tellMemory(soaked.samples);
  const faults = faultsIn(soaked);
  for (const fault of faults) console.log(`  FAULT ${fault}`);
  console.log(`  ${missing} never painted, ${faults.length} faults in logs and consoles`);
  return missing === 0 && isFlat && faults.length === 0;
}

/** The n-th entry that was saved is on the board once it has painted a count of n; how many never were. */
function tellTimes({ times, painted }: Soaked): number {
  const shown = times
    .toSorted((a, b) => a.answered - b.answered)
    .flatMap((time, index) => {
      const at = painted.find(({ count }) => count > index)?.at;
      return at === undefined ? [] : [{ ...time, at }];
    });
  const since = (of: (time: Timed) => number) => times.map(of);
  spread(
    "sent after its planned time",
    since(({ planned, sent }) => sent - planned),
  );
  spread(
    "planned to saved",
    since(({ planned, answered }) => answered - planned),
  );
  spread(
    "planned to painted on the board",
    shown.map(({ planned, at }) => at - planned),
  );
  // The board may paint before the answer has reached the page that asked.
  spread(
    "saved to painted on the board",
    shown.map(({ answered, at }) => Math.max(0, at - answered)),
  );
  return times.length - shown.length;
}

function spread(what: string, values: readonly number[]): void {
  const at = (share: number) => quantile(values, share).toFixed(0);
  console.log(`  ${what}: median ${at(0.5)} ms, p95 ${at(0.95)} ms, p99 ${at(0.99)} ms, most ${at(1)} ms`);
}

function tellMemory(samples: readonly Held[]): boolean {
  const grown = grownBy(samples);
  for (const { what, first, last } of grown) {
    const share = `${(100 * (last / first - 1)).toFixed(1)} %`;
    console.log(
      `  ${what}: ${first.toFixed(1)} MB in the first quarter, ${last.toFixed(1)} MB in the last (${share})`,
    );
  }
  const isFlat = grown
    .filter(({ what }) => (judged as readonly string[]).includes(what))
    .every(({ what, first, last }) =>
      what === judged[1] ? last <= first + mayGrow.megabytes : last <= first * (1 + mayGrow.share),
    );
  console.log(
    `  ${judged[0]} within ${100 * mayGrow.share} %, ${judged[1]} within ${mayGrow.megabytes} MB (${isFlat ? "kept" : "NOT KEPT"})`,
  );
  return isFlat;
}

function faultsIn({ errors, log, printed }: Soaked): string[] {
  const logged = log.split("\n").filter((line) => /error|fault|warn|gone|hung|left-out/i.test(line));
  const said = printed.split("\n").filter((line) => /error|fault|reject/i.test(line) && !isOfBrowser(line));
  return [...errors, ...logged, ...said];
}

/** What the browser itself says of a machine without graphics or a bus. */
function isOfBrowser(line: string): boolean {
  return /^\[\d+:\d+[/:]/.test(line);
}
