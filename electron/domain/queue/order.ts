import { type TestCode, testCodes } from "../tests/registry.ts";

/**
 * Returns an athlete's next test: the first, in the protocol's order, that is neither done nor skipped; null when none
 * is left. Source: common practice, no published source.
 */
export function nextTest(done: ReadonlySet<TestCode>, leftOut: ReadonlySet<TestCode>): TestCode | null {
  return testCodes.find((test) => !done.has(test) && !leftOut.has(test)) ?? null;
}

/**
 * Returns the test that must come before `test`: the earliest one ahead of it that is neither done nor skipped. Null
 * when none blocks it; it doesn't check whether `test` itself is done or skipped.
 */
export function blockedBy(
  test: TestCode,
  done: ReadonlySet<TestCode>,
  leftOut: ReadonlySet<TestCode>,
): TestCode | null {
  const next = nextTest(done, leftOut);
  return next !== null && testCodes.indexOf(next) < testCodes.indexOf(test) ? next : null;
}
