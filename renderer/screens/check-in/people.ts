import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["checkIn"];

/** Somebody in the list of what was found. */
export type FoundPerson = Outputs["search"]["people"][number];
/** Somebody whose sheet is open. */
export type SheetPerson = Outputs["person"];
/** What came of a check-in. */
export type Admitted = Outputs["admit"];

/** What the right side of the screen shows. */
export type Shown =
  | { readonly kind: "nobody" }
  | { readonly kind: "person"; readonly athleteId: number }
  | { readonly kind: "walkUp"; readonly typed: string }
  | { readonly kind: "done"; readonly admitted: Admitted; readonly before: Before | null };

/** What was known before a check-in, to be put back by an undo. */
export type Before = Pick<
  SheetPerson,
  "board" | "share" | "guardianConsent" | "asked" | "birthYear" | "category"
>;

export function beforeOf(person: SheetPerson): Before {
  const { board, share, guardianConsent, asked, birthYear, category } = person;
  return { board, share, guardianConsent, asked, birthYear, category };
}
