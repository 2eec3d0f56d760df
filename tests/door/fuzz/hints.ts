import type { TestCode } from "../../../electron/domain/tests/registry.ts";

/** What a generator knows of the hall beside the schema: which rows there are, and which test a call is about. */
export interface Hints {
  readonly test: TestCode;
  /** Values that a key has in the hall just now (`athleteId` → ids of its athletes); none: only the schema counts. */
  known(key: string): readonly unknown[];
}
