import type { Answers } from "../../app/answers.ts";

/** What the door tells of one test's noise. */
export type TestNoise = Answers["noise"]["get"]["tests"][number];
