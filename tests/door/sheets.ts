import { defaultParameters, testCodes } from "../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../electron/domain/words.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import type { TestDesk } from "./desk.ts";

/** A planned day of the test's own date; open where asked. */
export function holdDay({ desk, clock }: TestDesk, { open = false } = {}): number {
  return desk.store.write(["day"], (db) => {
    const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
    const date = clock.at.toISOString().slice(0, 10);
    const id = addDay(db, { date, title: "Test day", restMinutes: 5 }, protocols);
    if (open) setDayState(db, id, "open");
    return id;
  });
}

/** Checks an athlete in with a bib. */
export function checkIn({ desk, clock }: TestDesk, dayId: number, athleteId: number, bib: number): void {
  desk.store.write(["entrants"], (db) =>
    setEntrant(db, dayId, { athleteId, state: "testing", bib, since: clock.at.toISOString() }),
  );
}

/** Brings a sheet through the door as a window does: as bytes, not as JSON. */
export async function bring(
  { handle }: Pick<TestDesk, "handle">,
  sheet: string | Uint8Array | ReadableStream,
): Promise<string> {
  const body = typeof sheet === "string" ? new TextEncoder().encode(sheet) : sheet;
  const headers = { "content-type": "application/octet-stream" };
  const init = { method: "POST", headers, body: body as BodyInit, duplex: "half" };
  const response = await handle(new Request("http://desk/trpc/intake.upload", init), "organiser");
  const answer = (await response.json()) as {
    result?: { data: { uploadId: string } };
    error?: { data: { sentence: Sentence } };
  };
  if (answer.result === undefined)
    throw new SheetRefused(answer.error?.data.sentence ?? { key: "no sentence" });
  return answer.result.data.uploadId;
}

/** A sheet was refused as a whole. */
class SheetRefused extends Error {
  readonly sentence: Sentence;
  constructor(sentence: Sentence) {
    super(sentence.key);
    this.sentence = sentence;
  }
}

type Caller = ReturnType<TestDesk["as"]>;
type ReadInput = Parameters<Caller["intake"]["read"]>[0];
type Stage = Awaited<ReturnType<Caller["intake"]["read"]>> extends AsyncIterable<infer Each> ? Each : never;
export type Preview = Extract<Stage, { stage: "preview" }>["preview"];

/** Looks at a sheet: the preview at the end of the reading. @throws SheetRefused */
export async function look(table: TestDesk, input: ReadInput): Promise<Preview> {
  let last: Stage | undefined;
  for await (const stage of await table.as("organiser").intake.read(input)) last = stage;
  if (last?.stage === "refused") throw new SheetRefused(last.sentence as Sentence);
  if (last?.stage !== "preview") throw new Error("The reading ended without a preview.");
  return last.preview;
}

/** Brings a sheet and looks at it. */
export async function lookAt(
  table: TestDesk,
  sheet: string | Uint8Array,
  input: Omit<ReadInput, "uploadId"> = {},
): Promise<Preview> {
  return look(table, { ...input, uploadId: await bring(table, sheet) });
}

/** Brings a sheet and takes it in. */
export async function take(
  table: TestDesk,
  kind: "roster" | "results" | "past",
  sheet: string | Uint8Array,
  mapping: Record<string, string> = {},
  blanks: Record<string, string> = {},
) {
  return table.as("organiser").intake.take({ uploadId: await bring(table, sheet), kind, mapping, blanks });
}

/** What a sheet was refused with. */
export async function refusalOfSheet(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof SheetRefused) return error.sentence.key;
    throw error;
  }
  throw new Error("This was taken, and should have been refused.");
}
