import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["reference"];

export type KeptBundle = Outputs["list"][number];
/** A bundle that was uploaded and not yet added. */
export type Brought = Outputs["bring"];
export type KeptTest = KeptBundle["tests"][number];
