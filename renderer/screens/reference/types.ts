import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["reference"];

/** A bundle that is kept. */
export type KeptBundle = Outputs["list"][number];
/** What is in a bundle that was brought and not yet added. */
export type Brought = Outputs["bring"];
export type KeptTest = KeptBundle["tests"][number];
