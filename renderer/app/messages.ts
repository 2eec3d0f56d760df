import type { Sentence } from "../../electron/domain/words.ts";
import { createCell } from "./cell.ts";

/** What the message strip of the desk can say. It stays until the next one comes or it is closed. */
export interface Message {
  /** done: it is saved. note: good to know. alert: something needs you. */
  readonly tone: "done" | "note" | "alert";
  /** Keys without a prefix are of sentences.json; other files by name: `{ key: "day:opened" }`. */
  readonly sentence: Sentence;
  /** One thing that can be done about it, such as undoing it. */
  readonly action?: { readonly label: Sentence; readonly act: () => void };
}

const message = createCell<Message | null>(null);

/** Shows a message in the strip and reads it out politely; replaces the one before. */
export function tell(told: Message | null): void {
  message.set(told);
}

/** The message that the strip shows; only the frame needs it. */
export function useMessage(): Message | null {
  return message.use();
}
