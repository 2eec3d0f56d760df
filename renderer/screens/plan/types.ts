import type { Answers } from "../../app/answers.ts";

/** What is planned for the day at hand, with all that nobody said filled in. */
export type Planned = Answers["plan"]["settings"];
export type PlannedLeague = Planned["leagues"][number];
export type PlannedStation = Planned["stations"][number];
/** A plan that was worked out. */
export type Result = NonNullable<Answers["plan"]["result"]>;
/** What one or two changes would bring. */
export type WhatIf = NonNullable<Answers["plan"]["whatIfs"]>["whatIfs"][number];
/** When a league would come. */
export type LeagueTime = Pick<PlannedLeague, "league" | "from" | "until">;

/** Returns the number of athletes that are planned for. */
export function headCount({ leagues }: Planned): number {
  return leagues.reduce((sum, { number, listed }) => sum + (number ?? listed), 0);
}
