import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["checkIn"];

/** An athlete among the results of the search. */
export type FoundPerson = Outputs["search"]["people"][number];
/** An athlete whose sheet is open. */
export type SheetPerson = Outputs["person"];
/** The outcome of a check-in. */
export type Admitted = Outputs["admit"];

/** The content of the right side of the screen. */
export type Shown =
  | { readonly kind: "nobody" }
  | { readonly kind: "person"; readonly athleteId: number }
  | { readonly kind: "walkUp"; readonly typed: string }
  | {
      readonly kind: "done";
      readonly admitted: Admitted;
      readonly before: Before | null;
      readonly changed: boolean;
    };

/** The athlete's data before a check-in, which an undo restores. */
export type Before = Pick<
  SheetPerson,
  "board" | "share" | "guardianConsent" | "asked" | "birthYear" | "category"
>;

export function beforeOf(person: SheetPerson): Before {
  const { board, share, guardianConsent, asked, birthYear, category } = person;
  return { board, share, guardianConsent, asked, birthYear, category };
}
