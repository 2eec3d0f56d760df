import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["people"];

export type Listed = Outputs["list"]["people"][number];
export type AthletePage = Outputs["get"];
export type Series = AthletePage["series"][number];

/** An imported result that was not removed. */
export type PastResult = Answers["people"]["pastResults"]["standing"][number];

/** Two records, and what one of both would be. */
export type BeforeJoining = Outputs["beforeJoining"];
