import { noTries, settled, type Tick, tryMore, waitLeft } from "../domain/lock/delay.ts";
import { pinTrouble } from "../domain/lock/pin.ts";
import type { Post } from "../domain/lock/post.ts";
import type { Caller } from "../domain/lock/roles.ts";
import { Refusal } from "../domain/refusal.ts";
import { sentence } from "../domain/words.ts";
import { freshLock, type KeptLock, type LockKeep } from "./kept.ts";
import { loadLock } from "./load.ts";
import { type LockNote, newestNotes } from "./log.ts";
import { isPin, keepPin, usualCost } from "./scrypt.ts";
import type { Standing, Tried } from "./standing.ts";

/** The current user of this computer's desk, and the means to change that. */
export interface DeskLock {
  /** Returns the caller at the desk's window. */
  who(): Caller;
  standing(): Standing;
  /** Sets the first PIN, or a new one with the current one. */
  setPin(pin: string, current: string | null): Promise<Tried>;
  removePin(current: string): Promise<Tried>;
  setIdleMinutes(minutes: number): void;
  handOver(to: Exclude<Post, { role: "organiser" }>): void;
  /** Locks an organiser's desk; changes nothing without a PIN, or for a volunteer's desk. */
  lock(why: NonNullable<LockNote["why"]>): void;
  unlock(pin: string): Promise<Tried>;
  /** Asks for the PIN again before something that only its owner may do; without a PIN the answer is always right. */
  confirm(pin: string): Promise<Tried>;
  /** Notes that somebody is at the desk. */
  touch(): void;
  /** Returns the lock's events, newest first. */
  notes(): LockNote[];
  /** Locks the desk if nobody has used it for too long; `busy` counts as use. */
  lookAtIdle(busy: boolean): void;
}

export interface LockParts {
  readonly keep: LockKeep;
  now(): Date;
  monotonic(): Tick;
  /** Called after every change that a window shows. */
  changed(): void;
  /** scrypt's N. */
  readonly cost?: number;
}

/** Reads the stored lock. With a PIN set, an organiser's desk starts locked. */
export function createLock(parts: LockParts): DeskLock {
  const { keep, monotonic } = parts;
  const loaded = loadLock(keep, note);
  const { unreadable } = loaded;
  let kept: KeptLock = { ...loaded.kept, tries: settled(loaded.kept.tries, monotonic()) };
  let locked = unreadable || (kept.pin !== null && kept.post.role === "organiser");
  let touched = monotonic().ms;
  if (kept.tries.since !== loaded.kept.tries.since) save({});

  function note(what: LockNote["what"], more: Omit<LockNote, "at" | "what"> = {}): void {
    try {
      keep.note(JSON.stringify({ at: parts.now().toISOString(), what, ...more } satisfies LockNote));
    } catch (error) {
      // A full disk must not keep anybody in or out.
      console.error(`The lock's log could not be written (${what}):`, error);
    }
  }

  /** Makes a change that must outlast the program, or refuses it. */
  function saveOrRefuse(change: Partial<KeptLock>): void {
    const next = { ...kept, ...change };
    try {
      keep.write(JSON.stringify(next, null, 2));
    } catch (error) {
      console.error("The lock could not be kept:", error);
      throw new Refusal("unavailable", sentence("lock.notKept"));
    }
    kept = next;
  }

  /** Makes a change in any case; on a full disk it lasts until the program ends. */
  function save(change: Partial<KeptLock>): void {
    try {
      saveOrRefuse(change);
    } catch {
      kept = { ...kept, ...change };
    }
  }

  /** Counts the try before checking it, so that ending the program meanwhile gains nothing. */
  async function tryPin(pin: string): Promise<Tried> {
    if (kept.pin === null) throw new Refusal("conflict", sentence("lock.noPin"));
    const waitMs = waitLeft(kept.tries, monotonic());
    if (waitMs > 0) return { outcome: "wait", waitMs };
    save({ tries: tryMore(kept.tries, monotonic()) });
    if (await isPin(pin, kept.pin)) {
      save({ tries: noTries });
      return { outcome: "right" };
    }
    note("wrong", { count: kept.tries.wrong });
    parts.changed();
    return { outcome: "wrong", waitMs: waitLeft(kept.tries, monotonic()) };
  }

  async function setPin(pin: string, current: string | null): Promise<Tried> {
    const trouble = pinTrouble(pin);
    if (trouble !== null) throw new Refusal("bad-input", trouble);
    const before = kept.pin;
    const tried = before === null ? ({ outcome: "right" } as const) : await tryPin(current ?? "");
    if (tried.outcome !== "right") return tried;
    saveOrRefuse({ pin: await keepPin(pin, parts.cost ?? usualCost.N), removed: false, tries: noTries });
    note(before === null ? "pin-set" : "pin-changed");
    touched = monotonic().ms;
    parts.changed();
    return tried;
  }

  async function removePin(current: string): Promise<Tried> {
    const tried = await tryPin(current);
    if (tried.outcome !== "right") return tried;
    saveOrRefuse({ ...freshLock, removed: true, idleMinutes: kept.idleMinutes });
    note("pin-removed");
    parts.changed();
    return tried;
  }

  async function unlock(pin: string): Promise<Tried> {
    if (unreadable)
      throw new Refusal("unavailable", sentence("lock.unreadable", { folder: keep.folder ?? "?" }));
    if (!locked && kept.post.role === "organiser") return { outcome: "right" };
    const tried = await tryPin(pin);
    if (tried.outcome !== "right") return tried;
    save({ post: { role: "organiser" } });
    locked = false;
    touched = monotonic().ms;
    note("opened");
    parts.changed();
    return tried;
  }

  function lock(why: NonNullable<LockNote["why"]>): void {
    if (locked || kept.pin === null || kept.post.role !== "organiser") return;
    locked = true;
    note("locked", { why });
    parts.changed();
  }

  return {
    who() {
      if (locked) return { role: "locked", station: null };
      const { post } = kept;
      return { role: post.role, station: post.role === "station" ? post.test : null };
    },
    standing: () => ({
      post: kept.post,
      locked,
      pinSet: kept.pin !== null,
      idleMinutes: kept.idleMinutes,
      waitMs: waitLeft(kept.tries, monotonic()),
      unreadable,
      folder: unreadable || (!locked && kept.post.role === "organiser") ? keep.folder : null,
    }),
    setPin,
    removePin,
    setIdleMinutes(idleMinutes) {
      saveOrRefuse({ idleMinutes });
      parts.changed();
    },
    handOver(to) {
      if (kept.pin === null) throw new Refusal("conflict", sentence("lock.noPin"));
      saveOrRefuse({ post: to });
      note("handed-over", to.role === "station" ? { to: to.role, test: to.test } : { to: to.role });
      parts.changed();
    },
    lock,
    unlock,
    confirm: async (pin) => (kept.pin === null ? { outcome: "right" } : await tryPin(pin)),
    touch() {
      touched = monotonic().ms;
    },
    notes: () => newestNotes(keep),
    lookAtIdle(busy) {
      if (busy) touched = monotonic().ms;
      else if (monotonic().ms - touched >= kept.idleMinutes * 60_000) lock("idle");
    },
  };
}
