import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["reference"];

export type KeptBundle = Outputs["list"][number];
type Uploaded = Outputs["bring"];
/** A reference table that was uploaded and not yet added. */
export type BroughtTable = Extract<Uploaded, { readonly kind: "table" }>;
/** A bundle that was uploaded and not yet added. */
export type BroughtBundle = Exclude<Uploaded, BroughtTable>;
/** Either of the two. */
export type Brought = BroughtBundle | BroughtTable;
export type KeptTable = Outputs["tables"]["tables"][number];
export type Publisher = Outputs["tables"]["publishers"][number];
export type KeptTest = KeptBundle["tests"][number];
