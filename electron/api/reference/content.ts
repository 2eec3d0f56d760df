import type { Bundle, BundleTest } from "../../domain/reference/bundle.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { defaultParameters, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import {
  allReferences,
  quartersOfReference,
  type ReferenceTest as StoredTest,
  testsOfReference,
} from "../../store/tables/reference-bundles.ts";

/**
 * The content of a bundle. `sameRules`: by the rules of the day at hand (without one, the usual), so that it compares.
 */
interface Content extends Pick<Bundle, "kind"> {
  readonly tests: { test: TestCode; variant: string; marks: number; sameRules: boolean }[];
  readonly marks: number;
  /** `2026-Q4`, or a year alone. */
  readonly quarters: string[];
}

/** Every bundle that is kept, with what it holds. */
export function referencesIn(db: ReadableDb) {
  const rules = rulesHere(db);
  return allReferences(db).map(({ id, origin, kind, addedAt, inTableOf }) => {
    const tests = testsOfReference(db, id);
    return {
      ...{ id, origin, addedAt, inTableOf },
      ...contentOf(kind, tests, quartersOfReference(db, id), rules),
    };
  });
}

/** Returns the content of a bundle before it is added. */
export function contentOfBundle(db: ReadableDb, { kind, tests, marks }: Bundle): Content {
  const counted = tests.map((test) => ({ ...test, marks: countOf(marks, test) }));
  const quarters = [...new Set(marks.map(({ quarter }) => quarter))].sort();
  return contentOf(
    kind,
    counted.filter((test) => test.marks > 0),
    quarters,
    rulesHere(db),
  );
}

function countOf(marks: Bundle["marks"], { test, variant }: BundleTest): number {
  return marks
    .filter((mark) => mark.test === test && mark.variant === variant)
    .reduce((sum, { count }) => sum + count, 0);
}

function contentOf(
  kind: Content["kind"],
  tests: readonly StoredTest[],
  quarters: string[],
  rules: (test: BundleTest) => boolean,
): Content {
  return {
    kind,
    tests: inOrderOfTests(tests).map((each) => {
      const { test, variant, marks } = each;
      return { test, variant, marks, sameRules: rules(each) };
    }),
    marks: tests.reduce((sum, { marks }) => sum + marks, 0),
    quarters,
  };
}

/** Sorts by the order in which the tests are done. */
export function inOrderOfTests<Of extends Pick<BundleTest, "test">>(tests: readonly Of[]): Of[] {
  return tests.toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test));
}

/** Returns a check whether a test has the rules of the day at hand or, without one, the usual rules. */
export function rulesHere(db: ReadableDb): (test: BundleTest) => boolean {
  const day = dayAtHand(db);
  return ({ test, variant, fingerprint: rules }) => {
    const parameters = day === undefined ? defaultParameters(test) : parametersOf(db, day.id, test);
    return fingerprint(test, variant, parameters) === rules;
  };
}
