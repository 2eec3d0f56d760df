import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../electron/domain/words.ts";
import type { Answers, Questions } from "./answers.ts";
import { client } from "./client.tsx";
import {
  holdAgain,
  holdRefused,
  holdSaved,
  isOfToday,
  type KeptRow,
  keeperOf,
  keptHere,
  onDisk,
  type Refused,
  takeOut,
} from "./device-keep.ts";
import { createOutbox, type Outbox } from "./outbox.ts";
import { isUnanswered, sentenceOf } from "./trouble.ts";

type Entry = Questions["station"]["enter"];
type Entered = Answers["station"]["enter"];
type Void = Questions["station"]["void"];
type Reading = Questions["study"]["read"];

/**
 * The attempt that somebody corrects or takes back, as it was entered, maybe at another device. `replaces`: what it corrects
 * itself, with that attempt as far as this device knows it.
 */
export interface MendedAttempt {
  readonly athleteId: number;
  readonly variant: string;
  readonly seen: unknown;
  readonly by: string;
  readonly replaces?: { readonly attemptId: string; readonly mended?: MendedAttempt | undefined };
}

/**
 * What is typed at a device: results, corrections, results that no longer count, and a second judge's readings; `bib` is
 * for people. `mended`: what a
 * correction is about, so that a table that lost that gets both.
 */
export type KeptEntry = { readonly id: string; readonly mended?: MendedAttempt | undefined } & (
  | { readonly what: "enter"; readonly bib: number | null; readonly entry: Entry }
  | { readonly what: "void"; readonly test: TestCode; readonly input: Void }
  | {
      readonly what: "read";
      readonly bib: number | null;
      readonly test: TestCode;
      readonly input: Reading;
    }
);

/** `waits`: it lies on this device's disk, and the table has not answered yet. */
export type Came = Entered | { readonly outcome: "waits" };

/** What says what somebody saw: a result, or a second judge's reading. */
export type SeenEntry = Exclude<KeptEntry, { what: "void" }>;

/** Returns what was seen, as far as a person has to recognise it. */
export function seenIn(item: SeenEntry): {
  readonly test: TestCode;
  readonly seen: readonly unknown[];
  readonly lengths: LengthUnit;
} {
  if (item.what === "read") {
    const { seen, lengths = "cm" } = item.input;
    return { test: item.test, seen, lengths };
  }
  const { test, attempts, lengths = "cm" } = item.entry;
  return { test, seen: attempts.map(({ seen }) => seen), lengths };
}

export const channel = "entries";
/** How long somebody who has typed waits for the table before the next athlete, in ms. */
const shortMs = 2_500;

/** Carries the table's questions: it wrote nothing. */
class Asked extends Error {
  readonly answer: Extract<Entered, { outcome: "ask" }>;
  constructor(answer: Extract<Entered, { outcome: "ask" }>) {
    super("asked");
    this.answer = answer;
  }
}

interface Listener {
  readonly came: (answer: Came) => void;
  readonly refused: (error: unknown) => void;
}

/** Who stands before the screen and waits for the answer to an entry. */
const listeners = new Map<string, Listener>();
let outbox: Outbox<KeptEntry> | null = null;

function entries(): Outbox<KeptEntry> {
  outbox ??= createOutbox<KeptEntry>(
    {
      firstBatch: (items) => items.slice(0, 1),
      send: async ([item]) => {
        if (item !== undefined) await send(item);
      },
      isUnanswered,
      onRefused(error, items) {
        for (const item of items) refuse(item, error);
      },
    },
    keeperOf(channel),
  );
  return outbox;
}

/** Sends what earlier pages of this device left unsent. */
export function resumeEntries(): void {
  entries();
}

async function send(item: KeptEntry): Promise<void> {
  if (item.what === "read") {
    const read = await client.study.read.mutate(item.input);
    if (read.outcome === "ask") throw new Asked(read);
    holdSaved(channel, item);
    listeners.get(item.id)?.came(read);
    return;
  }
  if (item.what === "void") {
    await withMended(lostBy(item), () => client.station.void.mutate(item.input));
    holdSaved(channel, withoutText(item));
    listeners.get(item.id)?.came({ outcome: "saved", told: null });
    return;
  }
  const answer = await withMended(lostBy(item), () => client.station.enter.mutate(item.entry));
  if (answer.outcome === "ask") throw new Asked(answer);
  holdSaved(channel, withoutText(item));
  listeners.get(item.id)?.came(answer);
}

/** What a table says that does not have the attempt: of one that nobody knows, no station says that it is its own. */
const unknownHere: readonly string[] = ["record.unknownAttempt", "door.otherStation"];

/** A lost attempt with its id, and the words with which a chain of corrections comes again. */
interface Lost {
  readonly id: string;
  readonly test: TestCode;
  readonly mended: MendedAttempt | undefined;
  readonly reason: string;
}

/** Sends a correction; a table that came back without what it corrects gets that first, under its own id. */
async function withMended<Answer>(lost: Lost | null, mend: () => Promise<Answer>): Promise<Answer> {
  try {
    return await mend();
  } catch (error) {
    if (lost?.mended === undefined || !isUnknownThere(error)) throw error;
    await enterLost(lost, lost.mended);
    return await mend();
  }
}

function isUnknownThere(error: unknown): boolean {
  return unknownHere.includes(sentenceOf(error).key);
}

/** Enters a lost attempt in its place in the chain; alone, where the table has nothing of what it corrects. */
async function enterLost({ id, test, reason }: Lost, mended: MendedAttempt): Promise<void> {
  const { seen, replaces, ...whose } = mended;
  // It was saved once: what was doubtful about it was answered then.
  const entry: Entry = { ...whose, test, attempts: [{ id, seen }], note: "", sure: true };
  const alone = () => client.station.enter.mutate(entry);
  if (replaces === undefined) return void (await alone());
  const { attemptId } = replaces;
  try {
    await withMended({ id: attemptId, test, mended: replaces.mended, reason }, () =>
      client.station.enter.mutate({ ...entry, replaces: { attemptId, reason } }),
    );
  } catch (error) {
    if (!isUnknownThere(error)) throw error;
    await alone();
  }
}

function lostBy(item: Exclude<KeptEntry, { what: "read" }>): Lost | null {
  const { mended } = item;
  if (item.what === "void") {
    return { id: item.input.attemptId, test: item.test, mended, reason: item.input.reason };
  }
  const { replaces, test } = item.entry;
  return replaces === undefined ? null : { id: replaces.attemptId, test, mended, reason: replaces.reason };
}

/** What the table has it has with its words; a device keeps none, since anybody may be named in them. */
function withoutText(item: Exclude<KeptEntry, { what: "read" }>): KeptEntry {
  if (item.what === "void") return { ...item, input: { ...item.input, reason: "" } };
  const { replaces, ...entry } = item.entry;
  const without = replaces === undefined ? {} : { replaces: { ...replaces, reason: "" } };
  return { ...item, entry: { ...entry, ...without, note: "" } };
}

/** Sends what the table lost once more, as `item`. */
export function sendLost(item: KeptEntry): void {
  holdAgain(channel, item);
  entries().add(item);
}

/**
 * Sends a test's readings once more: to a table that was opened anew, maybe from an earlier backup. Those that it has
 * change nothing there.
 */
export function sendReadingsAgain(test: TestCode): void {
  const own = keptHere.get().filter((row) => row.channel === channel && isOfToday(row));
  for (const { item, saved } of own) {
    const kept = item as KeptEntry;
    // It was saved once: what was doubtful about it was answered then.
    if (saved && kept.what === "read" && kept.test === test)
      sendLost({ ...kept, input: { ...kept.input, sure: true } });
  }
}

/** Whoever still waits at the screen hears it there; otherwise it stays on the device until somebody decides. */
function refuse(item: KeptEntry, error: unknown): void {
  const listener = listeners.get(item.id);
  // Whoever was on the day's list and is not any more was deleted: nothing of them stays here.
  if (listener === undefined && item.what === "read" && sentenceOf(error).key === "station.notListed") return;
  if (listener === undefined) holdRefused(channel, item.id, reasonOf(error, item));
  else if (error instanceof Asked) listener.came(error.answer);
  else listener.refused(error);
}

function reasonOf(error: unknown, item: KeptEntry): Refused {
  const asked = error instanceof Asked;
  const told = asked ? error.answer.questions : [sentenceOf(error)];
  return { told: told.map((each) => withoutName(each, item)), asked };
}

/** A device keeps no names: the bib stands for whoever a sentence names. */
function withoutName({ key, values }: Sentence, item: KeptEntry): Sentence {
  if (values === undefined) return { key };
  const name = item.what !== "void" && item.bib !== null ? String(item.bib) : "–";
  return { key, values: "name" in values ? { ...values, name } : values };
}

/**
 * Keeps an entry on this device's disk and sends it after those before it. Resolves with the table's answer, or says
 * after a short while that it waits.
 * @throws what the table refuses it for
 */
export async function keepAndSend(item: KeptEntry): Promise<Came> {
  const box = entries();
  const answer = new Promise<Came>((came, refused) => listeners.set(item.id, { came, refused }));
  // Looked at below, maybe after it was refused.
  answer.catch(() => undefined);
  box.add(item);
  await onDisk();
  const short = new Promise<Came>((resolve) => setTimeout(() => resolve({ outcome: "waits" }), shortMs));
  try {
    return await Promise.race([answer, short]);
  } finally {
    listeners.delete(item.id);
  }
}

/**
 * Sends what the table refused once more. Somebody has read what it asked and says yes to that; where it asked nothing,
 * a doubt that it has by now is asked first.
 */
export function sendAgain(row: KeptRow): void {
  const item = row.item as KeptEntry;
  const sure = row.refused?.asked === true;
  // Added before the other is taken out: a crash in between leaves both, and the same id twice changes nothing.
  entries().add(withYes(item, sure));
  takeOut(row);
}

function withYes(item: KeptEntry, sure: boolean): KeptEntry {
  if (item.what === "enter") return { ...item, entry: { ...item.entry, sure } };
  return item.what === "read" ? { ...item, input: { ...item.input, sure } } : item;
}

/** Returns typed entries that the table refused, for rendering. */
export function useRefused(): readonly KeptRow[] {
  return keptHere.use().filter(({ refused }) => refused !== null);
}
