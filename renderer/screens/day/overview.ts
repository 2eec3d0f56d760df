import type { Answers } from "../../app/answers.ts";

/** What the overview of a day tells. */
export type Overview = Answers["day"]["overview"];
