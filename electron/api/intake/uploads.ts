import { mostRosters } from "../../domain/sheets/limits.ts";
import { sentence } from "../../domain/words.ts";
import { createUploads } from "../door/uploads.ts";
import type { PlannedSheet } from "./sheet.ts";

/** An uploaded sheet that may be imported. */
interface Upload {
  readonly bytes: Uint8Array;
  /** The rows not imported at the last look or import. */
  keptBack: Pick<PlannedSheet, "kind" | "headers" | "keptBack" | "separator"> | null;
}

/** As many as one rehearsal takes: a roster of each league, past results and results. */
const most = mostRosters + 2;

export const uploads = createUploads<Upload>(sentence("sheets.gone"), most);
