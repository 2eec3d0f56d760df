import type { Desk } from "../../electron/api/door/desk.ts";
import { createHandler, type Handle } from "../../electron/api/handler.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { appRouter } from "../../electron/api/router.ts";
import { callerAt, type JoinedDevice } from "../../electron/domain/devices/place.ts";
import type { Role } from "../../electron/domain/lock/roles.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { openStore } from "../../electron/store/connection/open.ts";

/** The machine's clocks, which stand still until a test moves them. */
export interface TestClock {
  /** Wall time: setting it alone is somebody setting the clock. */
  at: Date;
  /** The monotonic clock: setting both of its parts is the machine starting anew. */
  monotonic: { ms: number; boot: string };
  /** Moves on by so many minutes. */
  pass(minutes: number): void;
  /** Moves on by so many ms. */
  tick(ms: number): void;
}

export interface TestDesk {
  readonly desk: Desk;
  readonly handle: Handle;
  readonly clock: TestClock;
  /** Faults that were nobody's input; a test of the door ends with none. */
  readonly faults: unknown[];
  /** The procedures as that role may call them. */
  as(who: Role, station?: TestCode): ReturnType<typeof appRouter.createCaller>;
  /** The procedures as a device on the network may call them. */
  from(device: JoinedDevice): ReturnType<typeof appRouter.createCaller>;
}

export function testClock(): TestClock {
  const clock: TestClock = {
    at: new Date("2026-11-14T09:00:00Z"),
    monotonic: { ms: 5_000_000, boot: "hall" },
    pass: (minutes) => clock.tick(minutes * 60_000),
    tick(ms) {
      clock.at = new Date(clock.at.getTime() + ms);
      clock.monotonic = { ...clock.monotonic, ms: clock.monotonic.ms + ms };
    },
  };
  return clock;
}

type Parts = Parameters<typeof createDesk>[0];
/** What a desk may have beside its store; `open` where it has another store than the one of the file. */
type More = Partial<Pick<Parts, "lock" | "rehearse" | "open" | "network" | "networkBounds" | "calculator">>;

/** A desk on a real store (in memory unless a file is given), with a clock that stands still and seeded chance. */
export function testDesk(file = ":memory:", clock = testClock(), more: More = {}): TestDesk {
  const faults: unknown[] = [];
  const open = () => openStore({ file });
  const demoSheets = demoSheetsIn(new URL("../../resources/demo", import.meta.url).pathname);
  const desk = createDesk({
    open,
    now: () => clock.at,
    monotonic: () => clock.monotonic,
    random: seeded(1),
    demoSheets,
    // As little as is allowed: the tests look at what comes of a PIN, not at how long it takes.
    lockCost: 2 ** 15,
    ...more,
  });
  const handle = createHandler(desk, (fault) => faults.push(fault));
  return {
    desk,
    handle,
    clock,
    faults,
    as: (who, station) => appRouter.createCaller({ who, station: station ?? null, desk }),
    from(device) {
      const { role, station } = callerAt(device.place);
      return appRouter.createCaller({ who: role, station, device, desk });
    },
  };
}

/** Chance that repeats: the linear congruential generator of Park & Miller 1988 (16807, 2^31 − 1). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return (state - 1) / 2_147_483_646;
  };
}

/** What a call was refused with: the key of its sentence and the values in it. Throws when it was not refused. */
export async function refusalOf(call: Promise<unknown>): Promise<{ key: string; values?: unknown }> {
  try {
    await call;
  } catch (error) {
    const cause = error instanceof Error ? error.cause : undefined;
    if (cause instanceof Refusal) return cause.sentence;
    throw error;
  }
  throw new Error("This was taken, and should have been refused.");
}
