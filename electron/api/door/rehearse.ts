import type { DayProtocol } from "../../store/tables/days.ts";
import type { RehearsalStage } from "./rehearsal-shapes.ts";

/** A day to rehearse: its date (ISO 8601), its rules, and the sheets as file bytes. */
export interface DayToRehearse {
  readonly date: string;
  readonly restMinutes: number;
  readonly protocols: readonly DayProtocol[];
  readonly roster: Uint8Array;
  readonly past: Uint8Array | null;
  readonly results: Uint8Array | null;
}

/**
 * Holds a day on a store of its own, deleted afterwards. Yields each step before it begins; the last stage is the
 * result. A consumer that stops ends it after the current step.
 */
export type Rehearse = (day: DayToRehearse) => AsyncGenerator<RehearsalStage, void>;
