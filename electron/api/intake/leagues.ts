import { fold } from "../../domain/people/fold.ts";
import type { SheetAnswers } from "./choices.ts";
import { nearest } from "./nearest.ts";
import { type Question, questionId } from "./questions.ts";

/** Words that many leagues have in their names: they tell none from another. */
const common = new Set(
  ["the of de del la las los el roller derby rollers league leagues liga club team women men junior"]
    .join(" ")
    .split(" "),
);
/** Most leagues that one spelling is compared with: a sheet may say another one on every row. */
const mostCompared = 200;

/** Returns the known leagues that another spelling, a longer form or the initials may stand for. */
export function leaguesLike(text: string, known: readonly string[]): string[] {
  return known.slice(0, mostCompared).filter((each) => isLike(fold(text), fold(each)));
}

function isLike(one: string, other: string): boolean {
  const [own, others] = [teamsOf(one), teamsOf(other)];
  if (own !== "" && others !== "" && own !== others) return false;
  if (nearest(one, [other]) !== undefined) return true;
  if (initialsOf(one) === other || initialsOf(other) === one) return true;
  const [few, many] = [ownWords(one), ownWords(other)].sort((a, b) => a.length - b.length) as [
    string[],
    string[],
  ];
  return few.length > 0 && few.every((word) => many.includes(word));
}

/** The figures and single letters of a name: A and B, or 1 and 2, are teams of their own. */
function teamsOf(folded: string): string {
  return folded
    .split(" ")
    .filter((word) => /^(?:\d+|.)$/u.test(word))
    .join(" ");
}

function ownWords(folded: string): string[] {
  return folded.split(" ").filter((word) => !common.has(word));
}

/** The initials of a name of at least two words; empty for a shorter one, which stands for itself. */
function initialsOf(folded: string): string {
  const words = folded.split(" ");
  return words.length < 2 ? "" : words.map((word) => [...word][0] ?? "").join("");
}

/** What a league of the sheet stands for: its name in the store (or a new one), or a question that is open. */
type Standing = { readonly name: string; readonly isKnown: boolean } | { readonly question: Question };

/** Says for each spelling of a sheet which league it stands for, asking once a spelling. */
export function leagueReader(known: readonly string[], answers: SheetAnswers, takesNew: boolean) {
  const all = new Map(known.map((name) => [fold(name), name]));
  const read = new Map<string, Standing>();
  return (text: string): Standing => {
    const found = read.get(text);
    if (found !== undefined) return found;
    const standing = standingOf(text, all, answers, takesNew);
    read.set(text, standing);
    if ("name" in standing && takesNew) all.set(fold(standing.name), standing.name);
    return standing;
  };
}

function standingOf(
  text: string,
  all: ReadonlyMap<string, string>,
  answers: SheetAnswers,
  takesNew: boolean,
): Standing {
  const exact = all.get(fold(text));
  if (exact !== undefined) return { name: exact, isKnown: true };
  const candidates = leaguesLike(text, [...all.values()]);
  if (candidates.length === 0) return { name: text, isKnown: false };
  const asked = { about: "league", candidates: candidates.map((league) => ({ ...nobody, league })) } as const;
  const said = { ...nobody, league: text };
  const id = questionId({ ...asked, said });
  const answer = answers[id];
  if (answer === undefined)
    return { question: { ...asked, id, said, mayBeNew: true, takesNew, loses: null, line: null } };
  const chosen = answer === "new" ? undefined : candidates[answer];
  return chosen === undefined ? { name: text, isKnown: false } : { name: chosen, isKnown: true };
}

const nobody = { name: "", number: "", league: "", birthYear: null };
