import { afterAll, describe, expect, test } from "vitest";
import { buildDisk, canMount } from "./disk.ts";
import {
  bornInNoRoom,
  cutInCheckpoints,
  cutOff,
  failing,
  filledUp,
  killed,
  startedFull,
  type Toll,
} from "./trials.ts";

/** The short form of `npm run plug`: the same faults, a few of each. */
const library = buildDisk();
const mount = canMount();
afterAll(() => {
  for (const answer of [library, mount]) {
    if (typeof answer === "object") console.log(`Skipped here: ${answer.why}`);
  }
});

function expectAllKept(toll: Toll, faults: number): void {
  expect(toll.wrong).toEqual([]);
  expect(toll.faults).toBeGreaterThanOrEqual(faults);
  expect(toll.saved).toBeGreaterThan(0);
}

test("what was saved survives the process's end at any moment, once, with its marks", async () => {
  expectAllKept(await killed(4, 11), 4);
});

describe.skipIf(typeof library !== "string")("on a disk that loses power or fails", () => {
  const disk = String(library);

  test("what was saved survives the power going", async () => {
    expectAllKept(await cutOff(disk, 5, 21), 5);
  });

  test("what was saved survives an end in a checkpoint", async () => {
    expectAllKept(await cutInCheckpoints(disk, 4, 71), 4);
  });

  test("with synchronous=NORMAL the same test fails, so it would notice", async () => {
    const toll = await cutOff(disk, 4, 31, "NORMAL");
    expect(toll.wrong).not.toEqual([]);
  });

  test("syncs that fail are told, and nothing saved is lost or there twice", async () => {
    const toll = await failing(disk, 2, 41, "sync");
    expectAllKept(toll, 0);
    expect(toll.refused.get("disk.failed")).toBeGreaterThan(0);
  });

  test("writes that find no room are told, and nothing saved is lost or there twice", async () => {
    const toll = await failing(disk, 2, 51, "write");
    expectAllKept(toll, 0);
    expect(toll.refused.get("disk.full")).toBeGreaterThan(0);
  });
});

test.skipIf(mount !== true)(
  "a store that could not be made whole for want of room is not there, and the next start makes it",
  async () => expectAllKept(await bornInNoRoom(650_000, 91), 1),
);

test.skipIf(mount !== true)(
  "a disk filled to the last byte refuses with a sentence and keeps what was saved",
  async () => {
    const toll = await filledUp(1_200_000, 61);
    expectAllKept(toll, 1);
    // Backups tell it too, and entering goes on all the same.
    expect(toll.refused.get("backups.full")).toBeGreaterThan(0);
  },
);

test.skipIf(mount !== true).each(["closed", "killed"] as const)(
  "a start on a full disk opens for reading, refuses an entry with a sentence, and goes on once there is room: %s",
  (ending) => {
    const expected = { attempts: 30, refused: "disk.full", entered: 10, trouble: "" };
    expect(startedFull(1_500_000, ending)).toEqual(expected);
  },
);
