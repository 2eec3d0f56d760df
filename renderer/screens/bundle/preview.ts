import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["bundle"];

export type Preview = NonNullable<Outputs["preview"]>;
/** The organiser's choice: k by its readers, and whether an athlete's marks are linked. */
export type Wish = Pick<Preview, "kind"> & { readonly k: 5 | 11 };
export type LogEntry = Outputs["log"][number];

/** Formats the first twelve digits of a hash in groups of four: enough to compare two by eye. */
export function shortHash(sha256: string): string {
  return (sha256.slice(0, 12).match(/.{4}/g) ?? []).join(" ");
}
