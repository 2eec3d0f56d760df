import type { Answers } from "../../app/answers.ts";

export type Overview = Answers["day"]["overview"];
