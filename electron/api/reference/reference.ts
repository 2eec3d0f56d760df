import { octetInputParser } from "@trpc/server/http";
import { z } from "zod";
import type { Bundle, BundleTest } from "../../domain/reference/bundle.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { refused, tooBig } from "../../domain/reference/refused.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { defaultParameters, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { dayAtHand } from "../../store/tables/days.ts";
import { allExports } from "../../store/tables/exports.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import {
  addReference,
  allReferences,
  quartersOfReference,
  referenceOf,
  removeReference,
  type ReferenceTest as StoredTest,
  testsOfReference,
} from "../../store/tables/reference-bundles.ts";
import type { Desk } from "../door/desk.ts";
import { allow, router } from "../door/trpc.ts";
import { createUploads, readUpload } from "../door/uploads.ts";
import { sha256Of } from "./files.ts";
import { readBundle } from "./read.ts";

/** Bundles that were read and may be added, with the hash of their file. */
const uploads = createUploads<{ readonly sha256: string; readonly bundle: Bundle }>(
  sentence("reference.gone"),
);

const originSchema = z.string().trim().min(1).max(bundleLimits.originLength);

function requireSize(bytes: number): void {
  if (bytes > bundleLimits.bytes) throw tooBig();
}

/**
 * @throws Refusal `bad-input` for a valid bundle that can't be compared with: invented athletes among real ones, a
 * rehearsal, and one shared from here.
 */
function requireForeign(desk: Desk, bundle: Bundle, sha256: string): void {
  if (bundle.rehearsal) throw refused(sentence("reference.rehearsal"));
  if (bundle.demo && desk.kind !== "demo") throw refused(sentence("reference.demo"));
  if (allExports(desk.store.db).some((made) => made.sha256 === sha256))
    throw refused(sentence("reference.own"));
}

/** Other organisers' bundles to compare with: looked at, added under an origin, and removed with all effects. */
export const reference = router({
  /** Uploads a bundle (bytes, not JSON) and returns its content. Kept in memory only; a refused one not at all. */
  bring: allow("organiser")
    .input(octetInputParser)
    .mutation(async ({ ctx: { desk }, input }) => {
      const bytes = await readUpload(input, requireSize);
      const bundle = readBundle(bytes);
      const sha256 = sha256Of(bytes);
      requireForeign(desk, bundle, sha256);
      const { db } = desk.store;
      const known = referenceOf(db, { sha256, contentSha256: bundle.contentSha256 })?.origin ?? null;
      return { bundleId: uploads.keep(desk, { sha256, bundle }), ...contentOfBundle(db, bundle), known };
    }),

  /** Adds an uploaded bundle. The same bundle again changes nothing and returns the origin it is stored under. */
  add: allow("organiser")
    .input(z.object({ bundleId: z.uuid(), origin: z.string().max(1000) }))
    .mutation(({ ctx: { desk }, input }) => {
      const { sha256, bundle } = uploads.find(desk, input.bundleId);
      const { data: origin } = originSchema.safeParse(input.origin);
      if (origin === undefined)
        throw refused(sentence("reference.origin", { most: bundleLimits.originLength }));
      requireForeign(desk, bundle, sha256);
      return desk.store.write(["references"], (db) => {
        const known = referenceOf(db, { sha256, contentSha256: bundle.contentSha256 });
        if (known !== undefined) return { added: false, origin: known.origin };
        const addedAt = desk.now().toISOString();
        addReference(db, { origin, kind: bundle.kind, sha256, addedAt }, bundle);
        return { added: true, origin };
      });
    }),

  list: allow("organiser").query(({ ctx: { desk } }) => referencesIn(desk.store.db)),

  /** Removes a bundle with all its effects; the same again changes nothing. */
  remove: allow("organiser")
    .input(z.object({ id: z.int() }))
    .mutation(({ ctx: { desk }, input: { id } }) =>
      desk.store.write(["references"], (db) => ({ removed: removeReference(db, id) })),
    ),
});

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
function referencesIn(db: ReadableDb) {
  const rules = rulesHere(db);
  return allReferences(db).map(({ id, origin, kind, addedAt }) => {
    const tests = testsOfReference(db, id);
    return {
      ...{ id, origin, addedAt },
      ...contentOf(kind, tests, quartersOfReference(db, id), rules),
    };
  });
}

/** Returns the content of a bundle before it is added. */
function contentOfBundle(db: ReadableDb, { kind, tests, marks }: Bundle): Content {
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
  const inOrder = tests.toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test));
  return {
    kind,
    tests: inOrder.map((each) => {
      const { test, variant, marks } = each;
      return { test, variant, marks, sameRules: rules(each) };
    }),
    marks: tests.reduce((sum, { marks }) => sum + marks, 0),
    quarters,
  };
}

/** Returns a check whether a test has the rules of the day at hand or, without one, the usual rules. */
function rulesHere(db: ReadableDb): (test: BundleTest) => boolean {
  const day = dayAtHand(db);
  return ({ test, variant, fingerprint: rules }) => {
    const parameters = day === undefined ? defaultParameters(test) : parametersOf(db, day.id, test);
    return fingerprint(test, variant, parameters) === rules;
  };
}
