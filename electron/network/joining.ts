import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import { codeBytes, codeFrom, readCode } from "../domain/devices/codes.ts";
import type { DevicePlace } from "../domain/devices/place.ts";

/** How long a code can be used, in ms. */
export const codeLastsMs = 120_000;
/** Wrong codes in a row after which nobody may try. */
export const mostWrong = 5;
/** How long nobody may try then, in ms. */
export const shutMs = 60_000;
/** Most devices that wait for an answer at the same time. */
const mostAsking = 16;
/** How long a device may wait for its answer, in ms. */
const askingLastsMs = 600_000;
const secretBytes = 32;

/** What came of a code that a device sent. */
type Asked =
  | { readonly outcome: "asked"; readonly ask: string }
  | { readonly outcome: "wrong" | "closed" | "full" }
  | { readonly outcome: "shut"; readonly waitMs: number };

/** A device that has given the right code and waits for the table. */
export interface Asking {
  readonly id: string;
  readonly name: string;
  readonly sinceMs: number;
}

type Answer = { readonly yes: false } | { readonly yes: true; readonly place: DevicePlace };

interface Waiting extends Asking {
  readonly secretHash: string;
  readonly answer: Answer | null;
}

/** What a device hears that asks for its answer; `gone` for one that never asked, or too long ago. */
type Heard =
  | { readonly state: "waiting" | "no" | "gone" }
  | { readonly state: "yes"; readonly id: string; readonly name: string; readonly place: DevicePlace };

/** The codes by which devices ask to join, and those that wait for the table's answer. */
export interface Joining {
  /** Opens joining with a new code, which replaces the last one. */
  open(): void;
  close(): void;
  /** The code and the ms that it can still be used; null while joining is closed. */
  code(): { readonly code: string; readonly leftMs: number } | null;
  /** Ms for which nobody may try a code. */
  shutForMs(): number;
  ask(typed: string, name: string): Asked;
  asking(): Asking[];
  /** Answers a device that waits; false when it does not wait any more. */
  answer(id: string, answer: Answer): boolean;
  hear(ask: string): Heard;
  /** The device has shown its token, so its answer arrived and is not given again. */
  arrived(id: string): void;
  /** Forgets everything: the switch is off. */
  forget(): void;
}

/** `ms`: a monotonic clock. `changed` is called after all that the table's screen shows. */
export function createJoining(ms: () => number, changed: () => void): Joining {
  let current: { code: string; untilMs: number } | null = null;
  let wrong = 0;
  let shutUntilMs = Number.NEGATIVE_INFINITY;
  const waiting = new Map<string, Waiting>();

  function valid(): typeof current {
    if (current !== null && ms() >= current.untilMs) current = null;
    return current;
  }
  function renew(): void {
    current = { code: codeFrom(randomBytes(codeBytes)), untilMs: ms() + codeLastsMs };
  }
  const unanswered = () => inTime().filter(({ answer }) => answer === null);
  function inTime(): Waiting[] {
    for (const each of waiting.values()) if (ms() - each.sinceMs > askingLastsMs) waiting.delete(each.id);
    return [...waiting.values()];
  }
  const shutForMs = () => Math.max(0, shutUntilMs - ms());

  /** A code that was tried wrongly so often is not worth its bits any more. */
  function tryWrong(): Asked {
    wrong += 1;
    if (wrong < mostWrong) return { outcome: "wrong" };
    wrong = 0;
    current = null;
    shutUntilMs = ms() + shutMs;
    changed();
    return { outcome: "shut", waitMs: shutMs };
  }

  function ask(typed: string, name: string): Asked {
    const waitMs = shutForMs();
    if (waitMs > 0) return { outcome: "shut", waitMs };
    const open = valid();
    if (open === null) return { outcome: "closed" };
    if (!sameText(readCode(typed), open.code)) return tryWrong();
    if (unanswered().length >= mostAsking) return { outcome: "full" };
    wrong = 0;
    // Each code lets one device ask; the next one is on the screen at once.
    renew();
    const secret = randomBytes(secretBytes).toString("base64url");
    const id = crypto.randomUUID();
    waiting.set(id, { id, name, sinceMs: ms(), secretHash: hashOf(secret), answer: null });
    changed();
    return { outcome: "asked", ask: secret };
  }

  function hear(secret: string): Heard {
    const hash = hashOf(secret);
    const found = inTime().find((each) => each.secretHash === hash);
    if (found === undefined) return { state: "gone" };
    const { id, name, answer } = found;
    if (answer === null) return { state: "waiting" };
    return answer.yes ? { state: "yes", id, name, place: answer.place } : { state: "no" };
  }

  return {
    open() {
      if (shutForMs() === 0) renew();
      changed();
    },
    close() {
      current = null;
      changed();
    },
    code() {
      const open = valid();
      return open === null ? null : { code: open.code, leftMs: open.untilMs - ms() };
    },
    shutForMs,
    ask,
    asking: () => unanswered().map(({ id, name, sinceMs }) => ({ id, name, sinceMs })),
    answer(id, answer) {
      const asking = waiting.get(id);
      if (asking === undefined || asking.answer !== null) return false;
      waiting.set(id, { ...asking, answer });
      changed();
      return true;
    },
    hear,
    arrived: (id) => void waiting.delete(id),
    forget() {
      current = null;
      wrong = 0;
      waiting.clear();
    },
  };
}

/** Compares in a time that tells nothing of the texts: hashes of equal length. */
function sameText(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(hashOf(a), "hex"), Buffer.from(hashOf(b), "hex"));
}

/** Returns the SHA-256 of a secret, in hexadecimal digits: all that is kept of one. */
export function hashOf(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}
