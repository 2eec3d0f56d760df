import { spawnSync } from "node:child_process";
import { join } from "node:path";
import type { ImportOnce, ImportWhat } from "./import-once.ts";

/** One sheet: medians over the rounds. */
interface ImportBench {
  readonly sheet: "roster" | "results";
  readonly rows: number;
  /** By the processor's time, which a busy machine makes no longer, and by the clock, of taking in and of bare INSERTs. */
  readonly ratio: number;
  readonly clockRatio: number;
  readonly bar: number;
  readonly oursMs: number;
  readonly bareMs: number;
  readonly previewMs: number;
  readonly pauseMs: number;
  readonly barePauseMs: number;
  /** The longest that an entry at the door waited meanwhile; null for a roster, which comes before the day. */
  readonly waitMs: number | null;
}

/** The longest pause that is asked for, in ms. */
const pauseBar = 50;
const script = join(import.meta.dirname, "import-once.ts");

const sheets = [
  { sheet: "roster", rows: 5_000, bar: 1.5 },
  { sheet: "results", rows: 5_000, bar: 2.5 },
  { sheet: "results", rows: 20_000, bar: 2.5 },
] as const;

/**
 * Taking a sheet in (decode, split, check, compare, write, one durable commit) against the library's split and bare
 * prepared INSERTs of the same rows in one transaction with the same settings, by turns, each in a process of its own.
 * `-- import ROUNDS`
 */
export function importLines(rounds = 5): string[] {
  return sheets.flatMap((each) => linesOf(measured(each, rounds)));
}

function measured({ sheet, rows, bar }: (typeof sheets)[number], rounds: number): ImportBench {
  const whats: readonly ImportWhat[] = [
    "bare",
    "take",
    "preview",
    ...(sheet === "results" ? ["entries" as const] : []),
  ];
  const all = Array.from({ length: rounds }, () =>
    whats.map((what) => [what, once(sheet, rows, what)] as const),
  ).flat();
  const middle = (what: ImportWhat, of: (told: ImportOnce) => number | null) =>
    median(all.filter(([each]) => each === what).map(([, told]) => of(told) ?? Number.NaN));
  const cpu = ({ cpuMs }: ImportOnce) => cpuMs;
  const clock = ({ tookMs }: ImportOnce) => tookMs;
  return {
    ...{ sheet, rows, bar },
    ratio: middle("take", cpu) / middle("bare", cpu),
    clockRatio: middle("take", clock) / middle("bare", clock),
    oursMs: middle("take", cpu),
    bareMs: middle("bare", cpu),
    previewMs: middle("preview", cpu),
    pauseMs: middle("take", ({ pauseMs }) => pauseMs),
    barePauseMs: middle("bare", ({ pauseMs }) => pauseMs),
    waitMs: sheet === "roster" ? null : middle("entries", ({ waitMs }) => waitMs),
  };
}

function once(sheet: string, rows: number, what: ImportWhat): ImportOnce {
  const run = spawnSync(process.execPath, [script, sheet, String(rows), what], { encoding: "utf8" });
  if (run.status !== 0) throw new Error(`${sheet} ${rows} ${what} ended with ${run.status}: ${run.stderr}`);
  return JSON.parse(run.stdout) as ImportOnce;
}

function linesOf(told: ImportBench): string[] {
  const { sheet, rows, ratio, clockRatio, bar, oursMs, bareMs, previewMs, pauseMs, barePauseMs, waitMs } =
    told;
  const kept = (is: boolean) => (is ? "kept" : "NOT KEPT");
  const ms = (value: number) => `${value.toFixed(0)} ms`;
  const lines = [
    `${sheet}, ${rows} rows: ratio ${ratio.toFixed(2)}, bar ${bar} (${kept(ratio <= bar)}); by the clock ${clockRatio.toFixed(2)}`,
    `  processor ${ms(oursMs)} against papaparse and bare INSERTs of ${ms(bareMs)}; the preview before it ${ms(previewMs)}`,
    `  longest pause ${ms(pauseMs)}, bar ${pauseBar} ms (${kept(pauseMs <= pauseBar)}); the bare INSERTs alone: ${ms(barePauseMs)}`,
  ];
  return waitMs === null
    ? lines
    : [...lines, `  longest wait of an entry at the door meanwhile: ${ms(waitMs)}`];
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
