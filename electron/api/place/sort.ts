import type { TestCode } from "../../domain/tests/registry.ts";
import type { Category } from "../../store/tables/athletes.ts";

/** What is compared: marks of one fingerprint, of athletes of one category. */
export interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}
