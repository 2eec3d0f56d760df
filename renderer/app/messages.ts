import type { Sentence } from "../../electron/domain/words.ts";
import { createCell } from "./cell.ts";

/** A message in the desk's message strip. It stays until the next one comes or it is closed. */
export interface Message {
  /** done: it is saved. note: good to know. alert: something needs you. */
  readonly tone: "done" | "note" | "alert";
  /** Keys without a prefix are from sentences.json; other files by name: `{ key: "day:opened" }`. */
  readonly sentence: Sentence;
  /** One possible action, such as undo. */
  readonly action?: { readonly label: Sentence; readonly act: () => void };
}

const message = createCell<Message | null>(null);

/** Shows a message in the strip and reads it out politely; replaces the one before. */
export function tell(told: Message | null): void {
  message.set(told);
}

/** Returns the message in the strip; only the frame needs it. */
export function useMessage(): Message | null {
  return message.use();
}
