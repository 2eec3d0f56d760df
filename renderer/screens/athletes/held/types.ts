import type { Answers } from "../../../app/answers.ts";

type People = Answers["people"];

/** All data held about one athlete. */
export type Held = People["held"];
export type HeldDay = Held["days"][number];
/** Counts of the data that an erasure deletes and keeps. */
export type Before = People["beforeErasing"];
export type Erasure = People["erasures"][number];

/** The part of an athlete's page that this section needs. */
export interface HeldAthlete {
  readonly athleteId: number;
  readonly name: string;
  readonly number: string;
  readonly league: string;
  readonly birthYear: number | null;
  readonly category: "women" | "men" | "open" | null;
}
