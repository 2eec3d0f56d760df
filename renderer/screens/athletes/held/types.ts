import type { Answers } from "../../../app/answers.ts";

type People = Answers["people"];

/** All that is held about one athlete. */
export type Held = People["held"];
export type HeldDay = Held["days"][number];
/** What would go and what would stay. */
export type Before = People["beforeErasing"];
export type Erasure = People["erasures"][number];

/** Of an athlete's page, what this part of it needs. */
export interface HeldAthlete {
  readonly athleteId: number;
  readonly name: string;
  readonly number: string;
  readonly league: string;
  readonly birthYear: number | null;
  readonly category: "women" | "men" | "open" | null;
}
