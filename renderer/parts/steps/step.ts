import type { Answers } from "../../app/answers.ts";

/** A step of the history of who is who, or an import. */
export type Step = Answers["people"]["steps"][number];
