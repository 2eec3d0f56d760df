import type { TestCode } from "../../domain/tests/registry.ts";
import type { Category } from "../../store/tables/athletes.ts";

/** The marks that compare: of one fingerprint, and of athletes in one category. */
export interface Sort {
  readonly test: TestCode;
  readonly fingerprint: string;
  readonly category: Category | null;
}
