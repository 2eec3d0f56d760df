import type { Bundle } from "../reference/bundle.ts";
import type { PackedTable } from "./packed.ts";

/** A zip from elsewhere that is to be read. */
export interface ToRead {
  readonly zip: Uint8Array;
  /** ISO 8601 */
  readonly today: string;
}

/** What a zip from elsewhere turned out to be; `sha256` in hexadecimal digits. */
export type FromElsewhere =
  /** `sha256`: of the zip. */
  | { readonly kind: "bundle"; readonly bundle: Bundle; readonly sha256: string }
  /** `sha256`: of what is signed. */
  | { readonly kind: "table"; readonly table: PackedTable; readonly sha256: string };
