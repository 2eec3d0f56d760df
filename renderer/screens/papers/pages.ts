import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import type { Paper } from "../../app/saving.ts";
import {
  type BibToPrint,
  bibsToPrint,
  chosenOf,
  type PaperPerson,
  type Papers,
  type What,
  type Who,
} from "./which.ts";

/** Lines of a record sheet's page: as many as a hand can write in. */
const linesOfPage: Readonly<Record<Paper, number>> = { a4: 22, letter: 19 };
/** Empty lines for walk-ups that every station has at least. */
const leastEmpty = 5;
const bibsOfPage = 2;
const badgesOfPage = 8;

/** One sheet of paper. */
export type Page =
  | {
      readonly kind: "record";
      readonly test: TestCode;
      /** Null: an empty line. */
      readonly lines: readonly (PaperPerson | null)[];
      /** From 1, among the pages of this test. */
      readonly page: number;
      readonly pages: number;
    }
  | { readonly kind: "bibs"; readonly bibs: readonly BibToPrint[] }
  | { readonly kind: "badges"; readonly people: readonly PaperPerson[] };

/** All sheets of paper of a choice, in the order of print. */
export function pagesOf(papers: Papers, what: What, who: Who, size: Paper): Page[] {
  if (what === "bibs")
    return chunks(bibsToPrint(papers, who), bibsOfPage).map((bibs) => ({ kind: "bibs", bibs }));
  const chosen = chosenOf(papers, who);
  if (what === "badges") return chunks(chosen, badgesOfPage).map((people) => ({ kind: "badges", people }));
  const tests = what === "records" ? testCodes : [what];
  return tests.flatMap((test) => recordsOf(test, chosen, linesOfPage[size]));
}

/** Whoever skips the test is not on its sheet; nor whom a line could not name. The last page is filled up. */
function recordsOf(test: TestCode, chosen: readonly PaperPerson[], size: number): Page[] {
  const people = chosen.filter((person) => !person.skips.includes(test) && isNameable(person));
  const pages = Math.ceil((people.length + leastEmpty) / size);
  const lines = Array.from({ length: pages * size }, (_none, index) => people[index] ?? null);
  return chunks(lines, size).map((some, index) => ({
    ...{ kind: "record", test, lines: some, page: index + 1, pages },
  }));
}

/** True if a line can say who somebody is without a name that they did not agree to: by bib, name or number. */
export function isNameable({ bib, name, number }: PaperPerson): boolean {
  return bib !== null || name !== null || number !== "";
}

function chunks<Item>(items: readonly Item[], size: number): Item[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_none, index) =>
    items.slice(index * size, (index + 1) * size),
  );
}
