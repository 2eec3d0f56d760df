import { z } from "zod";
import { noTries } from "../domain/lock/delay.ts";
import { idleMinutesSchema, postSchema, usualIdleMinutes } from "../domain/lock/post.ts";
import { keptPinSchema } from "./scrypt.ts";

/** All that the lock keeps from one run of the program to the next. It is of this machine, not of a day. */
export const keptLockSchema = z.strictObject({
  format: z.literal("tapeline-lock"),
  version: z.literal(1),
  pin: keptPinSchema.nullable(),
  /** There was a PIN, and it was taken away as it should be: written with that, so that a full log can't contradict it. */
  removed: z.boolean().default(false),
  post: postSchema,
  idleMinutes: idleMinutesSchema,
  tries: z.strictObject({
    wrong: z.int().min(0),
    since: z.strictObject({ ms: z.number(), boot: z.string().max(100) }).nullable(),
  }),
});

export type KeptLock = z.infer<typeof keptLockSchema>;

/** A desk as it is first: without a PIN it is the organiser's, and nothing locks. */
export const freshLock: KeptLock = {
  format: "tapeline-lock",
  version: 1,
  pin: null,
  removed: false,
  post: { role: "organiser" },
  idleMinutes: usualIdleMinutes,
  tries: noTries,
};

/** What the lock needs of the disk. */
export interface LockKeep {
  /** The text that was written last; null when there is none. */
  read(): string | null;
  /** Writes the whole text or nothing of it, through to the disk. Throws when it can't. */
  write(text: string): void;
  /** Adds a line to the lock's log, through to the disk. Throws when it can't. */
  note(line: string): void;
  /** The newest lines of the log, oldest first. */
  notes(): readonly string[];
  /** Whether whoever has the machine asks for the PIN to be forgotten. Asking once is answered once. */
  takeForgetting(): boolean;
}

/** Keeps the lock for as long as the program runs, for desks that no window shows. */
export function keepInMemory(): LockKeep {
  let text: string | null = null;
  const lines: string[] = [];
  return {
    read: () => text,
    write(written) {
      text = written;
    },
    note: (line) => void lines.push(line),
    notes: () => lines,
    takeForgetting: () => false,
  };
}
