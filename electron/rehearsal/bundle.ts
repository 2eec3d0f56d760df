import { zipOf } from "../bundle/zip.ts";
import type { Organiser } from "./sheets.ts";

/** The bundle that would be shared. */
export interface Bundle {
  readonly bytes: Uint8Array;
  /** Number of marks that would be released, and withheld. */
  readonly rows: number;
  readonly held: number;
}

/**
 * Makes the bundle of a day as it would be written, marked as a rehearsal: no log remembers it, so that nothing
 * prevents a second one with other rows. Where nothing may be shared there is no file; the rehearsal then shows the
 * empty one that was previewed.
 */
export async function makeBundle(organiser: Organiser, dayId: number): Promise<Bundle> {
  const preview = await organiser.bundle.preview({ dayId });
  if (preview === null) throw new Error("There is no day to make a bundle of.");
  const rows = preview.rows.length;
  const held = preview.held.reduce((sum, place) => sum + place.marks, 0);
  if (rows === 0) return { bytes: zipOf(preview.files), rows, held };
  const written = await organiser.bundle.write({ dayId, previewSha256: preview.sha256 });
  return { bytes: Buffer.from(written.bytes, "base64"), rows, held };
}
