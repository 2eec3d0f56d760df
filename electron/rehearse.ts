/**
 * `npm run rehearse`: a whole day without a window, to try the leagues' sheets the evening before. Exits with 0 when
 * every row was imported, 3 when some were not, 2 when there was nothing to rehearse, 1 when something failed.
 */
import { tmpdir } from "node:os";
import { join } from "node:path";
import { say } from "./api/door/words.ts";
import { sentence } from "./domain/words.ts";
import { demoSheetsIn } from "./host/demo-sheets.ts";
import { type RehearsalArguments, readArguments, WrongArguments } from "./rehearsal/arguments.ts";
import { type Rehearsed, rehearseDay, type Sheets } from "./rehearsal/day.ts";
import { type Ground, momentOf, type TemporaryDesk, temporaryDesk } from "./rehearsal/desk.ts";
import { fileSheet } from "./rehearsal/file-sheets.ts";
import { filesOf, NotWritten, writeFiles } from "./rehearsal/files.ts";
import { UnusableSheet } from "./rehearsal/sheets.ts";
import { summaryText } from "./rehearsal/summary.ts";

/** npm runs scripts in the project's folder; paths are relative to where it was called. */
const folder =
  process.env.npm_lifecycle_event === "rehearse" ? (process.env.INIT_CWD ?? process.cwd()) : process.cwd();

const ground: Ground = {
  folder: tmpdir(),
  nativeBinding: undefined,
  demoSheets: demoSheetsIn(join(import.meta.dirname, "../resources/demo")),
};

async function main(): Promise<number> {
  try {
    const wanted = readArguments(process.argv.slice(2), folder);
    if (wanted !== null) return await rehearse(wanted);
    console.log(say(sentence("rehearse.usage")));
    return 0;
  } catch (error) {
    return explain(error);
  }
}

async function rehearse(wanted: RehearsalArguments): Promise<number> {
  let temporary: TemporaryDesk | null = null;
  // First of all: an unprepared process ends at once, and would leave the names behind.
  const stayOn = whenStopped(() => temporary?.remove());
  try {
    const sheets = await sheetsOf(wanted);
    temporary = temporaryDesk(ground, momentOf(wanted.date, new Date()));
    const rehearsed = await toItsEnd(rehearseDay(temporary.desk, sheets));
    await writeFiles(wanted.out, filesOf(rehearsed));
    console.log(summaryText(rehearsed, wanted, performance.now() / 1000));
    return rehearsed.sheets.some(({ keptBack }) => keptBack.length > 0) ? 3 : 0;
  } finally {
    temporary?.remove();
    stayOn();
  }
}

/** @throws UnusableSheet when one of the files can't be read. */
async function sheetsOf({ roster, results, past }: RehearsalArguments): Promise<Sheets> {
  return {
    rosters: [await fileSheet(roster)],
    results: await fileSheet(results),
    past: past === null ? null : await fileSheet(past),
  };
}

/** Runs the steps without showing them: it takes a few seconds, and the terminal gets the result. */
async function toItsEnd(steps: ReturnType<typeof rehearseDay>): Promise<Rehearsed> {
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
  }
}

/** Runs `work` before the process ends by Ctrl-C or another signal; the returned function undoes that. */
function whenStopped(work: () => void): () => void {
  const signals = { SIGINT: 2, SIGTERM: 15, SIGHUP: 1 } as const;
  const undo = Object.entries(signals).map(([signal, number]) => {
    const end = () => {
      work();
      process.exit(128 + number);
    };
    process.once(signal, end);
    return () => process.off(signal, end);
  });
  return () => {
    for (const each of undo) each();
  };
}

/** Prints one clear line; an unforeseen error is shown whole. */
function explain(error: unknown): number {
  if (error instanceof WrongArguments) {
    console.error(`${say(error.sentence)}\n${say(sentence("rehearse.usage"))}`);
    return 2;
  }
  if (error instanceof UnusableSheet) {
    console.error(`${error.sheet}: ${say(error.sentence)}`);
    return 2;
  }
  if (error instanceof NotWritten) {
    console.error(say(error.sentence));
    return 1;
  }
  console.error(error);
  return 1;
}

process.exitCode = await main();
