import { ensureBuild } from "../../electron/runtime/build.ts";
import { backupLines } from "./backup.ts";
import { boardBench } from "./board.ts";
import { bringTableBench } from "./bring-table.ts";
import { callsBench } from "./calls.ts";
import { type CardsBench, cardsBench, cardsTargetMs } from "./cards.ts";
import { entryBench } from "./entry.ts";
import { forecastLines } from "./forecast.ts";
import { forecastSpeedLines } from "./forecast-speed.ts";
import { hallBench } from "./hall.ts";
import { linesOfHall } from "./hall-lines.ts";
import { importLines } from "./import.ts";
import { demoDay, inventedDays } from "./invented-days.ts";
import {
  type HiddenBench,
  hiddenBench,
  type NeighbourBench,
  neighbourBench,
  subtractionBench,
} from "./neighbour.ts";
import { planBench } from "./plan.ts";
import { planEntriesBench } from "./plan-entries.ts";
import { readingBench } from "./reading.ts";
import { recordBench } from "./record.ts";
import { referenceBench } from "./reference.ts";
import { tableBench } from "./reference-table.ts";
import { rehearseBench } from "./rehearse.ts";
import { startLines } from "./start.ts";
import { suggestionLines } from "./suggestions.ts";
import { tailLines } from "./tail.ts";
import { type Spread, windowsBench } from "./windows.ts";

/**
 * `npm run bench [-- FILE [SIZE]]`: one program after another, or that of one file (`hall 300`: a hall with 300 results), each figure beside its target. Ratios compare with the bare work in the
 * same run; times alone say as much about the machine. A slow figure is for people to judge: only a program that does
 * not run to its end makes the command fail.
 */
interface Program {
  /** The file that it is in, by which it is run alone. */
  readonly file: string;
  readonly name: string;
  readonly target: string;
  /** @param size how much is done, for a program that can do less; undefined: all of it */
  readonly run: (size?: number) => Promise<readonly string[]> | readonly string[];
}

const programs: readonly Program[] = [
  {
    file: "record",
    name: "recording an attempt with its mark, durable",
    target: "ratio at most 2.5",
    run: recording,
  },
  {
    file: "entry",
    name: "an entry at the door with earlier tests behind it",
    target: "at most 2.5 times its bare part, and with earlier results at most 1.2 times one without any",
    run: entering,
  },
  {
    file: "tail",
    name: "the slowest of many entries in a store of years",
    target: "at most 20 ms over the slowest bare INSERT",
    run: tailLines,
  },
  {
    file: "backup",
    name: "entries while a store of years is backed up",
    target: "no entry over 50 ms, at most 100 MB of memory more",
    run: backupLines,
  },
  {
    file: "start",
    name: "from a start to a window that can be used, by turns with an empty window",
    target: "without a store at most 1.8 times an empty window, with one 2 times",
    run: startLines,
  },
  {
    file: "reading",
    name: "reading after an entry with many results behind it",
    target: "at most 1.5 times the same with 1,000",
    run: reading,
  },
  {
    file: "plan-entries",
    name: "entries while a plan, its changes and forecasts are worked out",
    target: "p99 at most twice that of entries alone, and under 50 ms",
    run: enteringMeanwhile,
  },
  {
    file: "import",
    name: "taking in a roster of 5,000 rows, and 5,000 and 20,000 results",
    target: "ratio at most 1.5 and 2.5, no pause over 50 ms",
    run: importLines,
  },
  { file: "rehearse", name: "rehearsing the demonstration's day", target: "under 5 s", run: rehearsing },
  {
    file: "neighbour",
    name: "a neighbour against bundles",
    target: "nobody found likelier than one in k",
    run: neighbours,
  },
  {
    file: "reference",
    name: "merging the bundles of many organisers",
    target: "under 60 s and 512 MB, equal to a plain count",
    run: merging,
  },
  {
    file: "reference-table",
    name: "the reference table of 2,000 bundles that are kept (`reference-table 20000`: of so many)",
    target:
      "512 MB, equal to a plain count, at most 2 times DuckDB's own aggregates, a hundred more in 5 % of the whole from 20,000 on, five kills",
    run: tabling,
  },
  {
    file: "bring-table",
    name: "a reference table of 20,000 bundles comes, and entries go on",
    target: "no pause over 50 ms on a machine at rest: of the processor, for what one thread does alone",
    run: bringingIn,
  },
  {
    file: "windows",
    name: "from a record to both windows painted",
    target: "median and p95, no limit set",
    run: painting,
  },
  {
    file: "board",
    name: "the board through 200 bests and a long day",
    target: "no frame over 50 ms, memory within 10 %",
    run: showing,
  },
  {
    file: "forecast",
    name: "the forecast of a day's end against 200 halls simulated apart from it",
    target: "the span that says 8 of 10 holds 75 to 88 in 100, the middle within 5 minutes on average",
    run: forecastLines,
  },
  {
    file: "forecast-speed",
    name: "a forecast, and all changes with all pairs, for 120 athletes on one core",
    target: "300 ms and 5 s",
    run: forecastSpeedLines,
  },
  {
    file: "suggestions",
    name: "50 changes that halls were told to make, made in those halls",
    target: "truly saved within a third of what was said on average, none makes a day longer",
    run: suggestionLines,
  },
  { file: "cards", name: "the cards of 120 athletes as one PDF", target: "under 30 s", run: laying },
  {
    file: "plan",
    name: "the scheduler against five published hybrid flow shops",
    target: "within 3 % of the best known in 15 s of two processors, never below the bound",
    run: planning,
  },
  {
    file: "calls",
    name: "calling by the work ahead, against first come, first served: 60 simulated days of 49 athletes each",
    target: "no limit set: what the bound is left at 0 for",
    run: calling,
  },
  {
    file: "hall",
    name: "the hall under load: twelve devices, three big screens, 300 athletes",
    target:
      "at a hall's pace p95 from tap to all painted 100 ms, the table within a tenth, nothing lost or doubled",
    run: loading,
  },
];

const ms = (value: number) => `${value.toFixed(value < 10 ? 2 : 0)} ms`;

function recording(): string[] {
  const { ratio, recordMs, insertMs, each, target } = recordBench();
  return [
    `ratio ${ratio.toFixed(2)} (${kept(ratio <= target)})`,
    `${ms(recordMs)} against a bare prepared INSERT of ${ms(insertMs)}, medians of ${each}`,
  ];
}

async function entering(size = 100_000): Promise<string[]> {
  return (await entryBench(size)).map(({ history, marks, medianMs, p99Ms, cpuMs, ratio, overBare }) => {
    const bar = marks === 0 ? `: at most 2.5 (${kept(overBare.clock <= 2.5)})` : "";
    return (
      `${history} (${marks} results): processor ${ms(cpuMs)}, ratio ${ratio.toFixed(2)} (${kept(ratio <= 1.2)}); ` +
      `median ${ms(medianMs)}, p99 ${ms(p99Ms)}; over the bare part ${overBare.clock.toFixed(2)} by the clock${bar}, ` +
      `${overBare.cpu.toFixed(2)} by the processor`
    );
  });
}

async function reading(size = 100_000): Promise<string[]> {
  const lines: string[] = [];
  // The same answers from a larger store, and then answers that are longer by themselves.
  for (const own of [1, 20]) {
    for (const { procedure, few, many, firstMs, fewMs, manyMs, ratio } of await readingBench(size, own)) {
      const told = own === 1 ? kept(ratio <= 1.5) : `answers of ${own} days`;
      lines.push(
        `${procedure}: processor ${ms(fewMs)} with ${few} results, ${ms(manyMs)} with ${many} (first ${ms(firstMs)}): ` +
          `ratio ${ratio.toFixed(2)} (${told})`,
      );
    }
  }
  return lines;
}

async function enteringMeanwhile(): Promise<string[]> {
  const told = await planEntriesBench();
  const alone = told[0]?.p99Ms ?? Number.NaN;
  return told.map(
    ({ meanwhile, entries, medianMs, p99Ms, done }) =>
      `${meanwhile}: ${entries} entries, median ${ms(medianMs)}, p99 ${ms(p99Ms)} (${kept(p99Ms <= 2 * alone && p99Ms < 50)}), ${done} worked out`,
  );
}

function rehearsing(): string[] {
  const { medianMs, slowestMs, targetMs, runs } = rehearseBench();
  return [`${ms(medianMs)}, slowest ${ms(slowestMs)} of ${runs} (${kept(slowestMs < targetMs)})`];
}

async function neighbours(): Promise<string[]> {
  const demo = [await demoDay()];
  const days = inventedDays(200);
  const { pairs, found } = subtractionBench(days.slice(0, 10), 5);
  return [
    ...matched("the demonstration's day, marks, k 5", neighbourBench(demo, "marks", 5)),
    ...matched("200 invented days, marks, k 5", neighbourBench(days, "marks", 5)),
    ...matched("200 invented days, marks, k 11", neighbourBench(days, "marks", 11)),
    ...matched("200 invented days, linked profiles, k 5", neighbourBench(days, "profiles", 5)),
    ...hiddenFound("the demonstration's day", hiddenBench(demo, "marks", 5)),
    ...hiddenFound("20 invented days", hiddenBench(days.slice(0, 20), "marks", 5)),
    ...hiddenFound("20 invented days, linked profiles", hiddenBench(days.slice(0, 20), "profiles", 5)),
    `subtracting, if the log did not forbid a day's second bundle: ${found} of ${pairs} newcomers found`,
  ];
}

function hiddenFound(what: string, bench: HiddenBench): string[] {
  const { marks, foundWithout, foundWith, toldWithout, toldWith, daysChanged } = bench;
  return [
    `${what}: of ${marks} marks of hidden people ${foundWithout} found by taking everybody else off if nothing were done, ` +
      `${foundWith} as it is (${kept(foundWith === 0)}); ${daysChanged} days told otherwise, ${toldWith} marks for ${toldWithout}`,
  ];
}

function matched(what: string, bench: NeighbourBench): string[] {
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const { certainBefore, certainAfter, exposedAfter, guessedBefore, guessedAfter } = bench;
  return [
    `${what}: ${bench.bibs} bibs, something leaves of ${bench.leaving} of ${bench.days}, ${percent(bench.told)} of the marks`,
    `  matched for certain ${percent(certainBefore)} before, ${percent(certainAfter)} after (${kept(exposedAfter === 0)})`,
    `  guessed right ${percent(guessedBefore)} before, ${percent(guessedAfter)} after; ${ms(bench.milliseconds)} a day`,
  ];
}

async function tabling(bundles = 2000): Promise<string[]> {
  const bench = await tableBench(bundles, (line) => console.log(`  (${line})`));
  const { query, rows, wholeMs, peakBytes, againMs, moreMs, kills } = bench;
  const ratio = query.oursMs / query.bareMs;
  const isEqual = bench.differences.length === 0;
  const share = moreMs / wholeMs;
  return [
    `${bench.bundles} bundles of ${rows} rows: ${ms(wholeMs)}, ${(peakBytes / 1e6).toFixed(0)} MB at most (${kept(peakBytes < 512e6)})`,
    `equal to a plain count: ${isEqual ? "kept" : `NOT KEPT: ${bench.differences.slice(0, 3).join("; ")}`}`,
    `queries over what is kept (${query.keptRows} rows) ${ms(query.oursMs)}, DuckDB's own aggregates over one row for each mark ${ms(query.bareMs)}: ratio ${ratio.toFixed(2)} (${kept(ratio <= 2)})`,
    `the same again ${ms(againMs)}, with a hundred more ${ms(moreMs)}: ${(100 * share).toFixed(1)} % of the whole (${kept(share <= 0.05)})`,
    `killed ${kills.length} times and gone on: ${kept(!bench.killedDifferent)}`,
  ];
}

function merging(): string[] {
  const { bundles, rows, ms: took, peakBytes, onePeakBytes, lines, equal } = referenceBench();
  const megabytes = (bytes: number) => `${(bytes / 1024 / 1024).toFixed(0)} MB`;
  const isKept = took < 60_000 && peakBytes < 512 * 1024 * 1024;
  return [
    `${bundles} bundles, ${rows} rows in ${ms(took)}, at most ${megabytes(peakBytes)} (${kept(isKept)})`,
    `one bundle takes ${megabytes(onePeakBytes)}; ${lines} lines, the same as counted plainly (${kept(equal)})`,
  ];
}

async function bringingIn(): Promise<string[]> {
  const { bundles, groups, bytes, pauses, processor, bringHere } = await bringTableBench();
  const told = (of: Readonly<Record<string, number>>) =>
    Object.entries(of)
      .map(([step, pause]) => `${step} ${ms(pause)}`)
      .join(", ");
  const isKept = pauses.bring < 50 && Object.values(processor).every((each) => each < 50);
  return [
    `${groups} groups, ${bundles} bundles, ${(bytes / 1024 / 1024).toFixed(1)} MB: nobody is answered for at most ${told(pauses)}`,
    `  of the processor ${told(processor)}; read in the door's own thread ${ms(bringHere)} (${kept(isKept)})`,
  ];
}

async function painting(): Promise<string[]> {
  // Whatever was built before may be of other sources.
  await ensureBuild(console.log);
  const { athletes, records, places } = await windowsBench();
  return places.flatMap(({ place, answered, desk, board, both, afterAnswer }) => [
    `desk at its ${place} screen, ${records} records, ${athletes} athletes: both painted ${spread(both)}`,
    `  answered ${spread(answered)}, then both painted after ${spread(afterAnswer)}`,
    `  the desk ${spread(desk)}, the board ${spread(board)}`,
  ]);
}

async function showing(): Promise<string[]> {
  const { bests, frames, longestMs, over50, hours, turns, ...held } = await boardBench();
  const grown = held.endBytes / held.startBytes - 1;
  const megabytes = (bytes: number) => (bytes / 1e6).toFixed(2);
  return [
    `${bests} bests, ${frames} frames, the longest ${ms(longestMs)}, ${over50} over 50 ms (${kept(over50 === 0)})`,
    `${hours} hours of rotation, ${turns} scenes: ${megabytes(held.startBytes)} MB, then ${megabytes(held.endBytes)} MB`,
    `${(grown * 100).toFixed(1)} % more (${kept(grown <= 0.1)}); nodes ${held.startNodes}, then ${held.endNodes}`,
  ];
}

async function laying(): Promise<string[]> {
  return (await cardsBench()).flatMap(laid);
}

function laid(bench: CardsBench): string[] {
  const { paper, cards, pages, tookMs, laidOutMs, bytes, steps, longestGapMs, longestAnswerMs } = bench;
  return [
    `${cards} cards on ${pages} pages of ${paper}: ${ms(tookMs)} (${kept(tookMs < cardsTargetMs)}), laid out after ${ms(laidOutMs)}`,
    `  ${(bytes / 1e6).toFixed(1)} MB; the count went up ${steps} times`,
    `  meanwhile the desk paused ${ms(longestGapMs)} and waited ${ms(longestAnswerMs)} for an answer at most`,
  ];
}

async function planning(seconds = 15): Promise<string[]> {
  return (await planBench(seconds)).map((bench) => {
    const { number, best, bound, found, after, evaluations } = bench;
    const gap = `${((found / best - 1) * 100).toFixed(2)} %`;
    const isKept = found >= bound && found <= 1.03 * best;
    return (
      `instance ${number}: ${found}, best known ${best}, bound ${bound}: ${gap} over (${kept(isKept)}); ` +
      `found after ${after.toFixed(1)} s of ${bench.seconds.toFixed(1)}, ${evaluations} orders tried`
    );
  });
}

function calling(): string[] {
  return callsBench().map(({ hall, skipped, end, bounds }) => {
    const each = bounds.map(
      ({ bound, saved, later }) =>
        `with ${bound} min ${saved.toFixed(1)} min sooner, one ${later.toFixed(0)} min later`,
    );
    return `${hall}, ${skipped * 100} % of tests skipped: ${end.toFixed(0)} min; ${each.join("; ")}`;
  });
}

async function loading(results = 1_500): Promise<string[]> {
  // Whatever was built before may be of other sources.
  await ensureBuild(console.log);
  const elsewhere = await hallBench(results, "elsewhere");
  const here = await hallBench(Math.min(results, 300), "here");
  return [
    "each device with a processor of its own:",
    ...linesOfHall(elsewhere),
    "all screens drawn by this machine:",
    ...linesOfHall(here),
  ];
}

function spread({ median, p95 }: Spread): string {
  return `median ${median.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms`;
}

function kept(isKept: boolean): string {
  return isKept ? "kept" : "NOT KEPT";
}

const [only, size] = process.argv.slice(2);
const wanted = programs.filter(({ file }) => only === undefined || only === file);
if (wanted.length === 0)
  throw new Error(`One of ${programs.map(({ file }) => file).join(", ")}, not ${only}.`);
for (const { name, target, run } of wanted) {
  console.log(`\n${name}: ${target}`);
  try {
    for (const line of await run(size === undefined ? undefined : Number(size))) console.log(`  ${line}`);
  } catch (error) {
    console.error("  FAILED:", error);
    process.exitCode = 1;
  }
}
