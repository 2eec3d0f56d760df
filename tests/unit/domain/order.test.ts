import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blockedBy, nextTest } from "../../../electron/domain/queue/order.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

const none: ReadonlySet<TestCode> = new Set();
const some = fc.subarray([...testCodes]).map((tests) => new Set(tests));

describe("the order of tests is held", () => {
  test("strength, agility, power, core, endurance", () => {
    const done = new Set<TestCode>();
    const taken: TestCode[] = [];
    for (let next = nextTest(done, none); next !== null; next = nextTest(done, none)) {
      taken.push(next);
      done.add(next);
    }
    expect(taken).toEqual(["push-up", "agility", "vertical", "core", "endurance"]);
  });

  test("a test left out is passed over and blocks nothing", () => {
    expect(nextTest(new Set(["push-up"]), new Set(["agility"]))).toBe("vertical");
    expect(blockedBy("vertical", new Set(["push-up"]), new Set(["agility"]))).toBeNull();
  });

  test("the earliest test still to come is the one that blocks", () => {
    expect(blockedBy("endurance", none, none)).toBe("push-up");
    expect(blockedBy("endurance", new Set(["push-up", "vertical"]), none)).toBe("agility");
    expect(blockedBy("push-up", none, none)).toBeNull();
  });

  test("a test done out of order does not let a later one through", () => {
    expect(blockedBy("core", new Set(["vertical"]), new Set(["push-up"]))).toBe("agility");
  });

  test("nothing left: nothing is next and nothing blocks", () => {
    expect(nextTest(new Set(testCodes), none)).toBeNull();
    expect(nextTest(none, new Set(testCodes))).toBeNull();
    for (const code of testCodes) expect(blockedBy(code, none, new Set(testCodes))).toBeNull();
  });

  test("whatever is done or left out, the next test is never blocked and what blocks stands before", () => {
    fc.assert(
      fc.property(some, some, (done, leftOut) => {
        const next = nextTest(done, leftOut);
        if (next !== null) expect(blockedBy(next, done, leftOut)).toBeNull();
        for (const code of testCodes) {
          const before = blockedBy(code, done, leftOut);
          if (before === null) continue;
          expect(testCodes.indexOf(before)).toBeLessThan(testCodes.indexOf(code));
          expect(done.has(before) || leftOut.has(before)).toBe(false);
        }
      }),
    );
  });
});
