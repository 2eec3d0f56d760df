import type { Answers } from "../../app/answers.ts";

export type TestNoise = Answers["noise"]["get"]["tests"][number];
