import type { KeyObject } from "node:crypto";
import { mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { readTable } from "../api/reference/read-table.ts";
import { type DifferingHall, differingHalls } from "../domain/reference-table/differing-halls.ts";
import { sentence } from "../domain/words.ts";
import { writeWholeFiles } from "../files/whole.ts";
import { noQuarter } from "./batches.ts";
import { allOf } from "./database.ts";
import { type Engine, openEngine } from "./engine.ts";
import { groupsOf } from "./groups.ts";
import { openHome } from "./home.ts";
import { type Kept, openKept } from "./kept.ts";
import { NothingToMerge } from "./nothing.ts";
import { writePage } from "./page.ts";
import { percentilesSheet } from "./percentiles-sheet.ts";
import { steps } from "./steps.ts";
import { endings, type Source, type Telling, takeIn } from "./take-in.ts";
import { writeTable } from "./write-table.ts";

/** How a table is signed, and how long it may be used. */
export interface Signing {
  readonly key: KeyObject;
  readonly publisher: string;
  readonly made: string;
  readonly validUntil: string;
}

/** The input of a merge: absolute paths of a folder with what was sent, of the file to write and of what is kept. */
export interface MergeArguments {
  readonly folder: string;
  readonly out: string;
  /** Null: everything is read anew, and nothing is kept. */
  readonly kept: string | null;
  /** Null: a sheet of percentiles is written, and no table. */
  readonly signing: Signing | null;
  /** Folder for the page for everybody with the table in it; null: none is written. */
  readonly page: string | null;
}

/** The result of a merge. */
export interface Merged {
  /** Number of files that were used. */
  readonly files: number;
  /** Of how many halls they count. */
  readonly halls: number;
  readonly marks: number;
  readonly keptBack: number;
  /** Number of groups that the file tells. */
  readonly groups: number;
  /** Halls whose results differ from all others' by more than halls differ, by file or subfolder. Nothing of it is in the file. */
  readonly differing: readonly NamedHall[];
}

interface NamedHall extends Omit<DifferingHall, "hall"> {
  readonly name: string;
}

/**
 * Merges everything in a folder into one file. What can't be used is reported as it comes. Without anything that can be
 * used, nothing is written.
 * @throws NothingToMerge
 */
export async function merge(wanted: MergeArguments, telling: Telling): Promise<Merged> {
  const home = await openHome(wanted.kept);
  try {
    const engine = await openEngine(home.working, home.folder);
    try {
      return await mergeInto(wanted, engine, await openKept(engine, home.folder), telling);
    } finally {
      engine.close();
    }
  } finally {
    await home.leave();
  }
}

const countOfMarks = "SELECT SUM(marks) AS marks FROM told";

async function mergeInto(
  wanted: MergeArguments,
  engine: Engine,
  kept: Kept,
  telling: Telling,
): Promise<Merged> {
  let keptBack = 0;
  const isSheet = wanted.signing === null;
  // A sheet is of bundles, each of which counts whole; what one person hands in never stands for itself.
  const sources = await takeIn(wanted.folder, isSheet ? [endings.bundle] : Object.values(endings), kept, {
    ...telling,
    keptBack(name, why) {
      keptBack += 1;
      telling.keptBack(name, why);
    },
  });
  const none = {
    files: sources.length,
    halls: 0,
    marks: 0,
    keptBack,
    groups: 0,
    differing: [],
  };
  if (sources.length === 0) return none;
  const halls = hallsOf(sources, isSheet);
  await fill(engine, kept, sources, halls);
  const made = await (wanted.signing === null
    ? sheetOf(engine)
    : tableOf(engine, wanted.signing, sources, halls.names));
  const [{ marks } = { marks: 0 }] = await allOf(engine.rows<{ marks: number }>(countOfMarks));
  await mkdir(dirname(wanted.out), { recursive: true });
  await writeWholeFiles([{ path: wanted.out, content: made.content }]);
  if (wanted.page !== null && wanted.signing !== null) {
    // As a hall reads it: what no hall would take is in no page either.
    await writePage(readTable(Buffer.from(made.content), wanted.signing.made), wanted.page);
  }
  return { ...none, halls: halls.names.length, marks, groups: made.groups, differing: made.differing };
}

/** Halls by their numbers, which are places in `names`: that of each source, in their order. */
interface Halls {
  readonly names: readonly string[];
  readonly numbers: readonly number[];
}

/** Numbers the halls of the sources. On a sheet every bundle stands for itself. */
function hallsOf(sources: readonly Source[], apart: boolean): Halls {
  const numbers = new Map<string, number>();
  const those = sources.map((source) => {
    const name = hallOf(source, apart);
    const number = numbers.get(name) ?? numbers.size;
    numbers.set(name, number);
    return number;
  });
  return { names: [...numbers.keys()], numbers: those };
}

/** Name of the hall that all hand-ins together are; ends in no way in which another's does. */
const everyHandIn = "*.json";

/** A subfolder's name ends in a slash here, so that none is a file's. */
function hallOf({ name, subfolder, isHandedIn }: Source, apart: boolean): string {
  if (isHandedIn) return everyHandIn;
  return apart || subfolder === null ? name : `${subfolder}/`;
}

/** Makes `mark` the marks of all sources, with the number of their hall. */
async function fill(engine: Engine, kept: Kept, sources: readonly Source[], halls: Halls): Promise<void> {
  await kept.loaded();
  await engine.run(steps.tables);
  await engine.run("CREATE TABLE source (bundle INTEGER NOT NULL, hall INTEGER NOT NULL)");
  await engine.add(
    "source",
    sources.map(({ number }, index) => [number, halls.numbers[index] ?? -1]),
  );
  await takeTurns(engine, sources);
  await engine.run(`CREATE TABLE handed AS
    SELECT turn.turn, kept.kind, low, high
    FROM kept_mark AS kept JOIN turn ON turn.id = kept.bundle`);
  await engine.run(steps.handed);
  await engine.run("CREATE VIEW kind AS SELECT * FROM kept_kind");
  await engine.run(`CREATE VIEW mark AS
    SELECT source.hall, kind, quarter, low, high, marks
    FROM kept_mark AS kept JOIN source ON source.bundle = kept.bundle WHERE quarter <> '${noQuarter}'
    UNION ALL
    SELECT ${halls.names.indexOf(everyHandIn)}, kind, NULL, low, high, 1
    FROM handed_counting`);
}

/** Gives what people handed in an order: as the files came, and by their ids where that is the same. */
async function takeTurns(engine: Engine, sources: readonly Source[]): Promise<void> {
  await engine.run("CREATE TABLE turn (id INTEGER NOT NULL, turn INTEGER NOT NULL)");
  const handed = sources.filter(({ isHandedIn }) => isHandedIn);
  const key = ({ changed, bundle }: Source) => changed.padStart(20, "0") + bundle;
  const inTurn = handed.toSorted((a, b) => (key(a) < key(b) ? -1 : 1));
  await engine.add(
    "turn",
    inTurn.map(({ number }, index) => [number, index]),
  );
}

interface Made extends Pick<Merged, "groups" | "differing"> {
  readonly content: string | Uint8Array;
}

async function sheetOf(engine: Engine): Promise<Made> {
  return { ...(await percentilesSheet(engine)), differing: [] };
}

async function tableOf(
  engine: Engine,
  { key, publisher, made, validUntil }: Signing,
  sources: readonly Source[],
  halls: readonly string[],
): Promise<Made> {
  const { groups, halls: standing, testOf } = await groupsOf(engine);
  if (groups.length === 0) throw new NothingToMerge(sentence("references.noGroups"));
  const bundles = sources.flatMap(({ bundle, isHandedIn }) => (isHandedIn ? [] : bundle));
  const content = writeTable({ publisher, made, validUntil, bundles, groups }, key);
  const differing = differingHalls(standing).map(({ hall, test, off }) => {
    return { name: halls[hall] ?? "", test: testOf(test) ?? "", off };
  });
  return { content, groups: groups.length, differing };
}
