import type { DayProtocol } from "../../store/tables/days.ts";
import type { RehearsalStage } from "./rehearsal-shapes.ts";

/** A day to try out: its date (ISO 8601), how it will be held, and the sheets as files are: bytes. */
export interface DayToRehearse {
  readonly date: string;
  readonly restMinutes: number;
  readonly protocols: readonly DayProtocol[];
  readonly roster: Uint8Array;
  readonly past: Uint8Array | null;
  readonly results: Uint8Array | null;
}

/**
 * Holds a day on a store of its own, which is gone afterwards, telling each step before it begins; the last stage says
 * what came of it. Whoever stops listening ends it after the step at hand.
 */
export type Rehearse = (day: DayToRehearse) => AsyncGenerator<RehearsalStage, void>;
