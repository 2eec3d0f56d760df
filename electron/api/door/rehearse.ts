import type { DayProtocol } from "../../store/tables/days.ts";
import type { RehearsalStage } from "./rehearsal-shapes.ts";

/** A day to rehearse: its date (ISO 8601), its rules, and the sheets as file bytes. */
export interface DayToRehearse {
  readonly date: string;
  readonly restMinutes: number;
  readonly protocols: readonly DayProtocol[];
  /** A day has a roster of each league. */
  readonly rosters: readonly SheetToRehearse[];
  readonly past: SheetToRehearse | null;
  readonly results: SheetToRehearse | null;
}

/** A sheet in memory with what a person said of it; `name`: its file's. */
export interface SheetToRehearse {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly said: SaidOfSheet;
}

/** See `api/intake/choices.ts`. */
export interface SaidOfSheet {
  readonly headerLine?: number | undefined;
  readonly worksheet?: number | undefined;
  readonly league?: string | undefined;
  readonly date?: string | undefined;
  readonly dateOrder?: "day" | "month" | undefined;
  readonly blanks?: Readonly<Record<string, string>> | undefined;
}

/**
 * Holds a day on a store of its own, deleted afterwards. Yields each step before it begins; the last stage is the
 * result. A consumer that stops ends it after the current step.
 */
export type Rehearse = (day: DayToRehearse) => AsyncGenerator<RehearsalStage, void>;
