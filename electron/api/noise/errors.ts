import type { TestCode } from "../../domain/protocols/protocol.ts";
import { startingTypicalErrors, type TypicalError } from "../../domain/statistics/change.ts";
import type { Database } from "../../store/database.ts";

/** The typical error of each test as this store knows it: what every change is judged by. */
export function typicalErrorsOf(_db: Database): Readonly<Record<TestCode, TypicalError>> {
  return startingTypicalErrors;
}
