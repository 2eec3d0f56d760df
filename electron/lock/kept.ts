import { z } from "zod";
import { noTries } from "../domain/lock/delay.ts";
import { idleMinutesSchema, postSchema, usualIdleMinutes } from "../domain/lock/post.ts";
import { keptPinSchema } from "./scrypt.ts";

/** The lock's data from one run of the program to the next. It belongs to the computer, not to a day. */
export const keptLockSchema = z.strictObject({
  format: z.literal("tapeline-lock"),
  version: z.literal(1),
  pin: keptPinSchema.nullable(),
  /** True if a PIN was properly removed: written together with that, so that a full log can't contradict it. */
  removed: z.boolean().default(false),
  post: postSchema,
  idleMinutes: idleMinutesSchema,
  tries: z.strictObject({
    wrong: z.int().min(0),
    since: z.strictObject({ ms: z.number(), boot: z.string().max(100) }).nullable(),
  }),
});

export type KeptLock = z.infer<typeof keptLockSchema>;

/** A new desk: without a PIN it is the organiser's, and nothing locks. */
export const freshLock: KeptLock = {
  format: "tapeline-lock",
  version: 1,
  pin: null,
  removed: false,
  post: { role: "organiser" },
  idleMinutes: usualIdleMinutes,
  tries: noTries,
};

/** The lock's storage. */
export interface LockKeep {
  /** The folder for the file that drops a forgotten PIN; null where nothing is kept on a disk. */
  readonly folder: string | null;
  /** The text that was written last; null when there is none. */
  read(): string | null;
  /** Writes the whole text or nothing, and syncs it. Throws when it can't. */
  write(text: string): void;
  /** Adds a line to the lock's log, and syncs it. Throws when it can't. */
  note(line: string): void;
  /** Returns the newest lines of the log, oldest first. */
  notes(): readonly string[];
  /** True if the computer's owner asks to drop the PIN. Each request is answered once. */
  takeForgetting(): boolean;
}

/** Keeps the lock in memory, for desks that no window shows. */
export function keepInMemory(): LockKeep {
  let text: string | null = null;
  const lines: string[] = [];
  return {
    folder: null,
    read: () => text,
    write(written) {
      text = written;
    },
    note: (line) => void lines.push(line),
    notes: () => lines,
    takeForgetting: () => false,
  };
}
