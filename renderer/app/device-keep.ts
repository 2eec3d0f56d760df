import type { Sentence } from "../../electron/domain/words.ts";
import { createCell } from "./cell.ts";
import type { ItemKeeper, Sendable } from "./outbox.ts";
import { openSealedRows, type SealedRows, wipeSealedRows } from "./sealed.ts";

/** What a device keeps of one thing that it sends: ids, bibs and values of its own, never a name. */
export interface KeptRow {
  /** Whose outbox it belongs to: things of one channel go in order. */
  readonly channel: string;
  readonly item: Sendable;
  /** Why the table refused it; null while it waits. */
  readonly refusal: Sentence | null;
}

interface Held {
  row: KeptRow;
  /** Resolves to the row's number on the disk. */
  readonly number: Promise<number>;
}

let rows: SealedRows | null = null;
let held: readonly Held[] = [];
/** Each write begins when the one before has ended, so that the disk has them in order. */
let last: Promise<unknown> = Promise.resolve();

const kept = createCell<readonly KeptRow[]>([]);

/** All that this device keeps, in the order in which it was done: what waits for the table, and what it refused. */
export const keptHere = { get: kept.get, use: kept.use };

/** Reads what earlier pages of this device kept; call it before anything is sent. */
export async function openKeep(): Promise<void> {
  const opened = await openSealedRows();
  const all = await opened.all();
  held = all.map(([number, row]) => ({ row: row as KeptRow, number: Promise.resolve(number) }));
  rows = opened;
  show();
}

/** Returns how many entries wait for the table or for somebody who looks at a refused one. */
export function countKept(): number {
  return held.length;
}

/** Resolves once everything that was given is on this device's disk. */
export async function onDisk(): Promise<void> {
  await last;
}

/** Deletes everything that this device keeps, and its key: it was sent away, or its day is over. */
export async function wipeKeep(): Promise<void> {
  rows = null;
  held = [];
  show();
  await wipeSealedRows();
}

/** Returns what keeps the items of one channel. */
export function keeperOf<Item extends Sendable>(channel: string): ItemKeeper<Item> {
  const waiting = () => held.filter(({ row }) => row.channel === channel && row.refusal === null);
  return {
    read: () => waiting().map(({ row }) => row.item as Item),
    write(items) {
      const before = waiting();
      const ids = new Set(items.map(({ id }) => id));
      for (const each of before) if (!ids.has(each.row.item.id)) remove(each);
      const known = new Set(before.map(({ row }) => row.item.id));
      for (const item of items) if (!known.has(item.id)) add({ channel, item, refusal: null });
      show();
    },
  };
}

/** Keeps what the table refused, with its reason, until somebody decides what becomes of it. */
export function holdRefused(channel: string, id: string, refusal: Sentence): void {
  for (const each of held) {
    if (each.row.channel !== channel || each.row.item.id !== id) continue;
    each.row = { ...each.row, refusal };
    const { row, number } = each;
    void write(async (to) => to.replace(await number, row));
  }
  show();
}

/** Takes out what the table refused: to be sent anew, or since somebody decided against it. */
export function takeRefused(row: KeptRow): void {
  for (const each of held.filter((one) => one.row === row)) remove(each);
  show();
}

function add(row: KeptRow): void {
  const number = write((to) => to.add(row));
  held = [...held, { row, number }];
}

function remove(gone: Held): void {
  held = held.filter((each) => each !== gone);
  void write(async (to) => to.remove(await gone.number));
}

function write<Done>(act: (to: SealedRows) => Promise<Done>): Promise<Done> {
  const to = rows;
  if (to === null) throw new Error("The device's keep is not open.");
  const done = last.then(() => act(to));
  // Whoever waits for the disk hears of a fault there; the next write is tried all the same.
  last = done.catch(() => undefined);
  return done;
}

function show(): void {
  kept.set(held.map(({ row }) => row));
}
