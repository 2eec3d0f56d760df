import { createHash } from "node:crypto";
import { RowRefused } from "../../domain/tests/cells.ts";
import { sentence } from "../../domain/words.ts";
import type { SaidPerson } from "../door/shapes.ts";

/** Who or which league rows of a sheet mean, where only people can say so. */
export interface Question {
  /** A hash of all that was said and of everybody who is meant perhaps: an answer holds for exactly that. */
  readonly id: string;
  readonly about: "league" | "person";
  /** As the sheet has it. */
  readonly said: SaidPerson;
  /** Those who may be meant, in the order that answers count them. */
  readonly candidates: readonly SaidPerson[];
  /** Whether it can be somebody who is none of them. */
  readonly mayBeNew: boolean;
  /** Whether somebody new is added; otherwise their rows are not imported. */
  readonly takesNew: boolean;
  /** Who has the row's number now, and would go on without one where they are not meant. */
  readonly loses: string | null;
  /** An earlier line of this sheet with the same name; null where the candidates are from the store. */
  readonly line: number | null;
}

/** Makes the id of a question from what is asked. */
export function questionId(
  asked: Pick<Question, "about" | "said" | "candidates"> & { readonly line?: number | null },
): string {
  const listed = [asked.said, ...asked.candidates].map(({ name, number, league, birthYear }) => [
    name,
    number,
    league,
    birthYear,
  ]);
  return createHash("sha256")
    .update(JSON.stringify([asked.about, asked.line ?? null, ...listed]))
    .digest("hex");
}

/** A row that waits for an answer. Where nobody can be asked it is not imported, with this reason. */
export class RowAsked extends RowRefused {
  readonly question: Question;
  constructor(question: Question) {
    super(question.about === "league" ? "league" : "name", reasonOf(question));
    this.question = question;
  }
}

function reasonOf({ about, said, candidates }: Question) {
  const [first] = candidates;
  if (about === "league") {
    return sentence("sheets.row.asksLeague", { league: said.league, near: first?.league ?? "" });
  }
  const { name, number, league } = first ?? said;
  return number === ""
    ? sentence("sheets.row.asksPersonBare", { name, league })
    : sentence("sheets.row.asksPerson", { name, number, league });
}
