import fc, { type Arbitrary, type GeneratorValue } from "fast-check";
import { roles } from "../../../electron/domain/lock/roles.ts";
import { protocolOf, testCodes } from "../../../electron/domain/tests/registry.ts";
import { findDamage, findWrongMark } from "../../../electron/store/connection/checks.ts";
import { allAthletes } from "../../../electron/store/tables/athletes.ts";
import { allDays } from "../../../electron/store/tables/days.ts";
import { marksOfDay, rebuildMarks } from "../../../electron/store/tables/marks.ts";
import { connectionOf } from "../../store/connection.ts";
import { dump } from "../../store/hall.ts";
import { type Answer, type Asked, ask, bring, type Procedure, procedures } from "./ask.ts";
import { filesOf } from "./files.ts";
import { type FuzzHall, fuzzHall, holdDay } from "./hall.ts";
import { type Known, knownOf } from "./known.ts";
import { rawValues, spoiled } from "./oddities.ts";
import { isSchema, valuesOf } from "./schema.ts";

/** What came of many calls. */
export interface Toll {
  calls: number;
  /** Calls that were answered, by procedure, and refusals by the key of their sentence. */
  readonly answered: Map<string, number>;
  readonly refused: Map<string, number>;
  /** What must never be: the call and what it did. */
  readonly wrong: string[];
  slowestMs: number;
  slowest: string;
}

export function newToll(): Toll {
  return { calls: 0, answered: new Map(), refused: new Map(), wrong: [], slowestMs: 0, slowest: "" };
}

/** Far more of the processor than any call takes, on however slow a machine. */
const limitMs = 10_000;
const checkEvery = 100;

/** So many calls at random in one hall; the same seed makes the same calls. Adds to the toll. */
export async function fuzz(calls: number, seed: number, toll: Toll): Promise<void> {
  const hall = await fuzzHall();
  let failed: unknown = null;
  try {
    const all = fc.asyncProperty(fc.gen(), async (any) => {
      // A fault of the fuzz itself is told plainly, and not with every value that was drawn before it.
      await sequence({ hall, any, known: knownOf(hall.desk), toll, rows: rowsOf(hall) }, calls).catch(
        (error: unknown) => {
          failed = error;
        },
      );
    });
    await fc.assert(all, { seed, numRuns: 1 });
  } finally {
    hall.close();
  }
  if (failed !== null) throw failed;
}

async function sequence(run: Run, calls: number): Promise<void> {
  for (let index = 1; index <= calls; index += 1) {
    await one(run);
    if (index % checkEvery === 0 || index === calls) checkStore(run);
  }
}

interface Run {
  readonly hall: FuzzHall;
  readonly any: GeneratorValue;
  readonly known: Known;
  readonly toll: Toll;
  /** Every row of the store as it was after the last call that was answered. */
  rows: string;
}

function rowsOf({ desk }: FuzzHall): string {
  return `${desk.kind} ${JSON.stringify([...dump(desk.store.db)])}`;
}

/** Rows that were written by this connection, taken back or not. */
function changesOf({ desk }: FuzzHall): unknown {
  return connectionOf(desk.store.db).prepare<[], { count: number }>("SELECT total_changes() AS count").get()
    ?.count;
}

function draw<Value>(run: Run, arbitrary: Arbitrary<Value>): Value {
  return run.any(() => arbitrary);
}

/** Rare: what ends a day, changes the store, or takes long. */
const rare =
  /^(?:day\.(?:close|openDemo|leaveDemo)|backups\.(?:now|restore|setPassphrase)|rehearsal\.run|lock\.(?:unlock|setPin|removePin)|people\.erase)$/;
/** What much else needs first. */
const begins = /^(?:heat\.(?:gather|start|tap|place)|station\.enter|intake\.upload|bundle\.preview)$/;
const often = /^(?:heat|station|checkIn|intake|people)\./;

function weightOf({ path }: Procedure): number {
  if (rare.test(path)) return 3;
  if (begins.test(path)) return 60;
  return often.test(path) ? 20 : 10;
}

const byPath = new Map(procedures.map((procedure) => [procedure.path, procedure]));
const choice = fc.oneof(
  ...procedures.map((procedure) => ({
    weight: weightOf(procedure),
    arbitrary: fc.constant(procedure.path),
  })),
);

async function one(run: Run): Promise<void> {
  const procedure = byPath.get(draw(run, choice));
  if (procedure === undefined) throw new Error("There is no such procedure.");
  const asked = askedOf(run, procedure);
  run.hall.clock.tick(draw(run, fc.constantFrom(0, 20, 1500, 60_000)));
  const before = changesOf(run.hall);
  const kind = run.hall.desk.kind;
  const started = process.threadCpuUsage();
  const answer = await send(run, procedure, asked).catch((error: unknown): Answer => thrown(error));
  const { user, system } = process.threadCpuUsage(started);
  const took = (user + system) / 1000;
  note(run, procedure, asked, answer, took);
  const sameStore = kind === run.hall.desk.kind;
  const after = changesOf(run.hall);
  if (procedure.type === "query" && sameStore && before !== after) {
    run.toll.wrong.push(`${told(asked)}: a question changed the store`);
  }
  if (!sameStore || before !== after || procedure.type === "mutation") compare(run, asked, answer);
  // Between two days other things can be asked than on one.
  if (draw(run, fc.nat(9)) === 0) await holdDay(run.hall);
  if (changesOf(run.hall) !== after || before !== after || !sameStore) run.rows = rowsOf(run.hall);
}

/** A refusal leaves every row as it was. */
function compare(run: Run, asked: Asked, answer: Answer): void {
  if (answer.result !== undefined || answer.key === undefined) return;
  if (rowsOf(run.hall) !== run.rows)
    run.toll.wrong.push(`${told(asked)}: refused (${answer.key}), and rows changed`);
}

function thrown(error: unknown): Answer {
  return { status: 0, wrong: `the door threw ${error instanceof Error ? error.stack : String(error)}` };
}

function askedOf(run: Run, { path, type, inputs }: Procedure): Asked {
  const who = draw(
    run,
    fc.oneof({ weight: 9, arbitrary: fc.constant("organiser" as const) }, fc.constantFrom(...roles)),
  );
  const station = who === "station" ? draw(run, fc.constantFrom(null, ...testCodes)) : null;
  const test = draw(run, fc.constantFrom(...testCodes));
  // To erase somebody, who it is must be typed as well.
  const meant =
    path === "people.erase" ? draw(run, fc.constantFrom(...allAthletes(run.hall.desk.store.db))) : undefined;
  const own: Readonly<Record<string, readonly unknown[]>> = {
    test: [test],
    variant: protocolOf(test).variants,
    ...(meant !== undefined && { athleteId: [meant.id], typed: [meant.name] }),
  };
  const hints = { test, known: (key: string) => own[key] ?? run.known.of(key) };
  const [schema] = inputs.filter(isSchema);
  const value = schema === undefined ? undefined : draw(run, valuesOf(schema, hints));
  const isSpoiled = draw(run, fc.nat(9)) < 2;
  return { path, type, who, station, json: jsonOf(isSpoiled ? draw(run, spoiled(value)) : value) };
}

/** As JSON, with what JSON.stringify can't say in its place. */
function jsonOf(value: unknown): string | undefined {
  const json = JSON.stringify(value) as string | undefined;
  if (json === undefined || json.length > 300_000) return json;
  return json.replace(/"(raw:\w+)"/g, (whole, name: string) => rawValues[name] ?? whole);
}

async function send(run: Run, { path, inputs }: Procedure, asked: Asked): Promise<Answer> {
  const takesBytes = inputs.length > 0 && !inputs.some(isSchema);
  if (!takesBytes || draw(run, fc.nat(9)) === 0) return ask(run.hall, asked);
  return bring(run.hall, path, draw(run, filesOf(path)), asked.who);
}

function note(run: Run, { path }: Procedure, asked: Asked, answer: Answer, took: number): void {
  const { toll, known, hall } = run;
  toll.calls += 1;
  const faults = hall.faults.splice(0).map((fault) => (fault instanceof Error ? fault.stack : String(fault)));
  const wrong = [answer.wrong, ...faults].filter((each) => each !== undefined);
  if (wrong.length > 0) toll.wrong.push(`${told(asked)}: ${wrong.join("; ")}`);
  if (took > limitMs) toll.wrong.push(`${told(asked)}: took ${took.toFixed(0)} ms`);
  if (took > toll.slowestMs) Object.assign(toll, { slowestMs: took, slowest: path });
  const [counts, key] = answer.key === undefined ? [toll.answered, path] : [toll.refused, answer.key];
  counts.set(key, (counts.get(key) ?? 0) + 1);
  keepIds(known, answer.result);
}

/** Ids that only answers tell; later calls use them. */
function keepIds(known: Known, result: unknown): void {
  const { uploadId, bundleId, file } = (result ?? {}) as Record<string, unknown>;
  if (uploadId !== undefined)
    for (const key of ["uploadId", "roster", "past", "results"]) known.keep(key, uploadId);
  if (bundleId !== undefined) known.keep("bundleId", bundleId);
  const { sha256 } = (file ?? {}) as { sha256?: unknown };
  if (sha256 !== undefined) known.keep("previewSha256", sha256);
}

function told({ path, who, station, json }: Asked): string {
  return `${path} as ${who}${station ? ` of ${station}` : ""} with ${json?.slice(0, 600)}`;
}

/** The store is sound, and its marks are those that its attempts make. */
function checkStore({ hall, toll }: Run): void {
  const { db } = hall.desk.store;
  const damage = findDamage(db) ?? findWrongMark(db, 100_000);
  if (damage !== null) toll.wrong.push(`the store: ${damage}`);
  const marks = () => JSON.stringify(allDays(db).map((day) => marksOfDay(db, day.id)));
  const before = marks();
  hall.desk.store.write([], rebuildMarks);
  if (marks() !== before) toll.wrong.push("marks that were rebuilt differ from those that stood");
}
