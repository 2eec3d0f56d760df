import { z } from "zod";
import type { Bundle } from "../../domain/reference/bundle.ts";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { refused } from "../../domain/reference/refused.ts";
import { sentence } from "../../domain/words.ts";
import { allExports } from "../../store/tables/exports.ts";
import { addReference, referenceOf, removeReference } from "../../store/tables/reference-bundles.ts";
import type { Desk } from "../door/desk.ts";
import { allow } from "../door/trpc.ts";
import { createUploads } from "../door/uploads.ts";
import { contentOfBundle, referencesIn } from "./content.ts";

/** A bundle that was read, with the hash of its file. */
interface ReadBundle {
  readonly sha256: string;
  readonly bundle: Bundle;
}

/** Bundles that may be added. */
const uploads = createUploads<ReadBundle>(sentence("reference.gone"));

const originSchema = z.string().trim().min(1).max(bundleLimits.originLength);

/**
 * @throws Refusal `bad-input` for a valid bundle that can't be compared with: invented athletes among real ones, a
 * rehearsal, and one shared from here.
 */
function requireForeign(desk: Desk, { bundle, sha256 }: ReadBundle): void {
  if (bundle.rehearsal) throw refused(sentence("reference.rehearsal"));
  if (bundle.demo && desk.kind !== "demo") throw refused(sentence("reference.demo"));
  if (allExports(desk.store.db).some((made) => made.sha256 === sha256))
    throw refused(sentence("reference.own"));
}

/** Keeps a bundle at hand, to be added, and returns its content. @throws Refusal `bad-input` */
export function lookAtBundle(desk: Desk, read: ReadBundle) {
  requireForeign(desk, read);
  const { db } = desk.store;
  const { bundle, sha256 } = read;
  const known = referenceOf(db, { sha256, contentSha256: bundle.contentSha256 })?.origin ?? null;
  return { bundleId: uploads.keep(desk, read), ...contentOfBundle(db, bundle), known };
}

/** Adds an uploaded bundle. The same bundle again changes nothing and returns the origin it is stored under. */
export const addBundle = allow("organiser")
  .input(z.object({ bundleId: z.uuid(), origin: z.string().max(1000) }))
  .mutation(({ ctx: { desk }, input }) => {
    const read = uploads.find(desk, input.bundleId);
    const { data: origin } = originSchema.safeParse(input.origin);
    if (origin === undefined)
      throw refused(sentence("reference.origin", { most: bundleLimits.originLength }));
    requireForeign(desk, read);
    const { sha256, bundle } = read;
    return desk.store.write(["references"], (db) => {
      const known = referenceOf(db, { sha256, contentSha256: bundle.contentSha256 });
      if (known !== undefined) return { added: false, origin: known.origin };
      const addedAt = desk.now().toISOString();
      addReference(db, { origin, kind: bundle.kind, sha256, addedAt }, bundle);
      return { added: true, origin };
    });
  });

export const listBundles = allow("organiser").query(({ ctx: { desk } }) => referencesIn(desk.store.db));

/** Removes a bundle with all its effects; the same again changes nothing. */
export const removeBundle = allow("organiser")
  .input(z.object({ id: z.int() }))
  .mutation(({ ctx: { desk }, input: { id } }) =>
    desk.store.write(["references"], (db) => ({ removed: removeReference(db, id) })),
  );
