import { type TestCode, testCodes } from "../tests/registry.ts";

/**
 * The test that an athlete takes next: the first, in the order of the protocol, that is neither done nor left out; null
 * when nothing is left to take. Source: common practice, no published source.
 */
export function nextTest(done: ReadonlySet<TestCode>, leftOut: ReadonlySet<TestCode>): TestCode | null {
  return testCodes.find((test) => !done.has(test) && !leftOut.has(test)) ?? null;
}

/**
 * The test that must come before `test`: the earliest one ahead of it that is neither done nor left out. Null when
 * nothing stands in the way; whether `test` itself is done or left out is another question.
 */
export function blockedBy(
  test: TestCode,
  done: ReadonlySet<TestCode>,
  leftOut: ReadonlySet<TestCode>,
): TestCode | null {
  const next = nextTest(done, leftOut);
  return next !== null && testCodes.indexOf(next) < testCodes.indexOf(test) ? next : null;
}
