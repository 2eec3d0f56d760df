import type { WriteStream } from "node:tty";
import { say } from "../api/door/words.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** The part of a stream that a bar writes to. */
type Output = Pick<WriteStream, "write" | "isTTY" | "columns">;

/** Tells how far a command is. */
export interface Bar {
  /** @param isStep whether this is a moment for a line of its own, where lines can't be rewritten */
  show(done: number, all: number, isStep: boolean): void;
  /** Takes the line away, so that another can be printed. */
  clear(): void;
}

/** Time between two pictures of the line (ms). */
const pause = 100;

/**
 * Returns a bar with what is left: one line that is rewritten on a terminal, else plain lines. What is left is the pace
 * so far held against what is to come. @param now monotonic, in ms
 */
export function createBar(output: Output, now: () => number): Bar {
  const start = now();
  let last = Number.NEGATIVE_INFINITY;
  let drawn = false;
  return {
    show(done, all, isStep) {
      const at = now();
      const isDue = output.isTTY ? at - last >= pause || done >= all : isStep && done < all;
      // Nearly every time, and putting the line into words costs more than looking at a file that did not change.
      if (!isDue) return;
      const text = say(lineOf(done, all, at - start));
      if (!output.isTTY) {
        output.write(`${text}\n`);
        return;
      }
      last = at;
      drawn = true;
      const line = `[${"#".repeat(Math.floor((20 * done) / all)).padEnd(20, "·")}] ${text}`;
      // Longer than the terminal, it would leave a line at each picture.
      output.write(`\r${line.slice(0, output.columns - 1)}\u001b[K`);
    },
    clear() {
      if (drawn) output.write("\r\u001b[K");
      drawn = false;
    },
  };
}

function lineOf(done: number, all: number, ms: number): Sentence {
  const seconds = Math.ceil(((all - done) * ms) / done / 1000);
  const left = { done, all };
  return seconds < 90
    ? sentence("references.secondsLeft", { ...left, seconds })
    : sentence("references.minutesLeft", { ...left, minutes: Math.ceil(seconds / 60) });
}
