import type { Sentence } from "../../electron/domain/words.ts";
import { createCell } from "./cell.ts";

/** A message in the desk's message strip. It goes by itself, is closed, or gives way to the next one. */
export interface Message {
  /** done: it is saved. note: good to know. alert: something needs you; it stays until that is no longer true. */
  readonly tone: "done" | "note" | "alert";
  /** Keys without a prefix are from sentences.json; other files by name: `{ key: "day:opened" }`. */
  readonly sentence: Sentence;
  /** One possible action, such as undo; it goes with the message. */
  readonly action?: { readonly label: Sentence; readonly act: () => void };
  /** What it is about: it is no longer true once something else is done with that. */
  readonly about?: About;
  /** once: also for the screen that comes next, since what it tells leads there. always: for every screen. */
  readonly follows?: "once" | "always";
}

interface About {
  readonly athleteId?: number | undefined;
  /** A group of the API's procedures: "heat". */
  readonly group?: string;
}

const message = createCell<Message | null>(null);

/** Shows a message in the strip and reads it out politely; replaces the one before. */
export function tell(told: Message | null): void {
  message.set(told);
}

/** Returns what follows a change that a dialog was for: the message that it is done, and the dialog closes. */
export function tellDone(sentence: Sentence, close: () => void): () => void {
  return () => {
    tell({ tone: "done", sentence });
    close();
  };
}

/** Returns the message in the strip; only the frame needs it. */
export function useMessage(): Message | null {
  return message.use();
}

/** Takes a message away, unless another has come since. */
export function forget(told: Message): void {
  if (message.get() === told) message.set(null);
}

/** Takes away what belongs to a screen that was left, or to a day that is no longer at hand. */
export function leave(what: "screen" | "day"): void {
  const told = message.get();
  if (told === null || told.follows === "always") return;
  const { follows, ...rest } = told;
  if (follows === undefined) message.set(null);
  else if (what === "screen") message.set(rest);
}

/** Takes away what is no longer true since something was done: to the same athlete, or by the same group of procedures. */
export function overtake({ athleteId, group }: About): void {
  const about = message.get()?.about;
  if (about === undefined) return;
  const isOvertaken =
    (about.athleteId !== undefined && about.athleteId === athleteId) ||
    (about.group !== undefined && about.group === group);
  if (isOvertaken) message.set(null);
}

/** Ms before a read message goes: to notice it, and a slow reader's pace. Common practice, no source. */
const noticeMs = 4_000;
const letterMs = 80;
/** Least ms for a message with an action: it is also to be decided about and reached. Common practice, no source. */
const actionMs = 12_000;
/** An action is old after so many ms, even while the mouse happens to lie on it. */
export const oldMs = 60_000;

/** Returns the ms in which a message of that many letters is read. */
export function readingMs(letters: number, hasAction: boolean): number {
  return Math.max(noticeMs + letters * letterMs, hasAction ? actionMs : 0);
}
