import type { Sentence } from "../../electron/domain/words.ts";
import { createCell } from "./cell.ts";
import type { ItemKeeper, Sendable } from "./outbox.ts";
import { hasSealedRows, openSealedRows, type SealedRows, wipeSealedRows } from "./sealed.ts";

/** What a device keeps of one thing that it sends: ids, bibs and values of its own, never a name. */
export interface KeptRow {
  /** Whose outbox it belongs to: things of one channel go in order. */
  readonly channel: string;
  readonly item: Sendable;
  /** The table's day on which it was entered: it is never sent on another one. */
  readonly day: string;
  /**
   * True once the table has it: the device keeps it until the day is closed, in case the table is lost. True for what is
   * half typed, too, which nobody sends.
   */
  readonly saved: boolean;
  /** Why the table refused it; null while it waits. */
  readonly refused: Refused | null;
}

/** True for what the table has not answered yet. */
export function isWaiting({ saved, refused }: KeptRow): boolean {
  return !saved && refused === null;
}

/** Why the table refused something. */
export interface Refused {
  /** What it said, or all that it asked. */
  readonly told: readonly Sentence[];
  /** True if it asked, so that a yes sends the same again; anything else is asked about anew. */
  readonly asked: boolean;
}

interface Held {
  row: KeptRow;
  /** Resolves to the row's number on the disk. */
  readonly number: Promise<number>;
}

let rows: SealedRows | null = null;
let held: readonly Held[] = [];
let day = "";
/** Each write begins when the one before has ended, so that the disk has them in order. */
let last: Promise<unknown> = Promise.resolve();

const kept = createCell<readonly KeptRow[]>([]);

/** All that this device keeps, in the order in which it was done. */
export const keptHere = { get: kept.get, use: kept.use };

/** Does so only where there is something, so that a device that keeps nothing has nothing on its disk. */
export async function openKeepIfAny(): Promise<void> {
  if (await hasSealedRows()) await openKeep();
}

/** Reads what earlier pages of this device kept; call it before anything else here. */
export async function openKeep(): Promise<void> {
  const opened = await openSealedRows();
  const all = await opened.all();
  held = all.map(([number, row]) => ({ row: row as KeptRow, number: Promise.resolve(number) }));
  rows = opened;
  show();
}

/**
 * Says which day the table has now; call it before anything is sent. What waits from another day is not sent on this
 * one: it stays as refused, for somebody to decide.
 */
export function keepDay(now: string): void {
  day = now;
  const told = [{ key: "join:refusedHere.otherDay" }];
  for (const each of held.filter(({ row }) => row.day !== day)) {
    if (each.row.saved) remove(each);
    else if (each.row.refused === null) change(each, { refused: { told, asked: false } });
  }
  show();
}

/** Returns how many entries wait for the table or for somebody who looks at a refused one. */
export function countKept(): number {
  return held.filter(({ row }) => !row.saved).length;
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

/** The day is closed: nothing stays but what the table never had, and that only until somebody deletes it. */
export async function closeKeep(): Promise<void> {
  for (const each of held.filter(({ row }) => row.saved)) remove(each);
  show();
  if (countKept() === 0) await wipeKeep();
}

/** True for what can still be sent: the table has the day on which it was entered. */
export function isOfToday(row: KeptRow): boolean {
  return row.day === day;
}

/** Returns what keeps the items of one channel. */
export function keeperOf<Item extends Sendable>(channel: string): ItemKeeper<Item> {
  const waiting = () => held.filter(({ row }) => row.channel === channel && isWaiting(row));
  return {
    read: () => waiting().map(({ row }) => row.item as Item),
    write(items) {
      const before = waiting();
      const ids = new Set(items.map(({ id }) => id));
      for (const each of before) if (!ids.has(each.row.item.id)) remove(each);
      const known = new Set(
        held
          .filter(({ row }) => row.channel === channel && row.refused === null)
          .map(({ row }) => row.item.id),
      );
      for (const item of items)
        if (!known.has(item.id)) add({ channel, item, day, saved: false, refused: null });
      show();
    },
  };
}

/** Keeps what the table refused, with its reason, until somebody decides what becomes of it. */
export function holdRefused(channel: string, id: string, refused: Refused): void {
  for (const each of held) if (isOf(each, channel, id)) change(each, { refused, saved: false });
  show();
}

/** The table has it: keeps a copy until the day is closed, as `item`. */
export function holdSaved(channel: string, item: Sendable): void {
  for (const each of held) if (isOf(each, channel, item.id)) change(each, { item, saved: true });
  show();
}

/** Keeps, until the day is closed, what the table has from this device by another way, or what is half typed. */
export function holdCopy(channel: string, item: Sendable): void {
  const kept = held.find((each) => isOf(each, channel, item.id));
  if (kept === undefined) add({ channel, item, day, saved: true, refused: null });
  else if (JSON.stringify(kept.row.item) !== JSON.stringify(item)) change(kept, { item });
  else return;
  show();
}

/** Forgets it. */
export function dropCopy(channel: string, id: string): void {
  const kept = held.find((each) => isOf(each, channel, id));
  if (kept === undefined) return;
  remove(kept);
  show();
}

/** The table lost it: it waits again, as `item`. */
export function holdAgain(channel: string, item: Sendable): void {
  for (const each of held) if (isOf(each, channel, item.id)) change(each, { item, saved: false });
  show();
}

/** Takes something out: to be sent anew, or since it must not be kept any more. */
export function takeOut(row: KeptRow): void {
  for (const each of held.filter((one) => one.row === row)) remove(each);
  show();
}

function isOf({ row }: Held, channel: string, id: string): boolean {
  return row.channel === channel && row.item.id === id;
}

function change(each: Held, part: Partial<KeptRow>): void {
  const row = { ...each.row, ...part };
  each.row = row;
  // What has changed again since is written by its own turn: whoever types is faster than a disk.
  void write(async (to) => {
    if (each.row === row) await to.replace(await each.number, row);
  });
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
