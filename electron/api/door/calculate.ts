import type { Athlete, Hall, Known, Moment } from "../../domain/plan/hall.ts";
import type { DayPlan, Forecast, Progress, WhatIf } from "../../domain/plan/told.ts";
import type { FromElsewhere, ToRead } from "../../domain/reference-table/from-elsewhere.ts";
import type { Sentence } from "../../domain/words.ts";

/** What a long calculation of a plan starts from. With the same seed it gives the same figures. */
interface PlanTask {
  readonly hall: Hall;
  readonly athletes: readonly Athlete[];
  readonly known: readonly Known[];
  readonly seed: number;
  /** Number of simulated days; left out, as many as the kind takes by itself. */
  readonly days?: number;
}

/** A long calculation, by its kind. */
export type Calculation =
  | ({ readonly kind: "plan" } & PlanTask)
  | ({ readonly kind: "whatIfs" } & PlanTask)
  | {
      readonly kind: "forecast";
      readonly moment: Moment;
      readonly known: readonly Known[];
      readonly seed: number;
      readonly days?: number;
    }
  | ({ readonly kind: "read" } & ToRead);

export type CalculationKind = Calculation["kind"];

/** What each kind comes to. */
export interface Outcomes {
  readonly plan: DayPlan;
  readonly whatIfs: readonly WhatIf[];
  readonly forecast: Forecast;
  readonly read: FromElsewhere | { readonly refused: Sentence };
}

/** A calculation under way. */
export interface Calculating<Kind extends CalculationKind> {
  /** Rejects with {@link Stopped} when it was stopped, and with the fault where it failed. */
  readonly outcome: Promise<Outcomes[Kind]>;
  /** Ends it at once; ending it twice changes nothing. */
  stop(): void;
}

/** A calculation was stopped before it had an outcome. */
export class Stopped extends Error {}

/** Begins calculations, each kind in a thread of its own; a new one of a kind stops the one before. */
export interface Calculator {
  begin<Kind extends CalculationKind>(
    task: Extract<Calculation, { readonly kind: Kind }>,
    tell: (done: Progress) => void,
  ): Calculating<Kind>;
  /** Ends all of them, and their threads. */
  close(): void;
}
