import MiniSearch, { type SearchResult } from "minisearch";
import { fold } from "../../domain/people/fold.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Store } from "../../store/connection/store.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";

/** The searchable names of a store; read again after a change to people. */
interface Names {
  readonly index: MiniSearch<Document>;
  /** Stops listening to the store. */
  readonly stop: () => void;
  /** The indexed text of each athlete, to update only changed ones. */
  readonly known: Map<number, string>;
  stale: boolean;
}

interface Document {
  readonly id: number;
  readonly name: string;
  readonly number: string;
  readonly league: string;
}

const namesOfStores = new WeakMap<Store, Names>();
/** Most words of a query: longer ones find nothing more, and nobody types them. */
const mostWords = 6;

/**
 * Returns words for comparison: a name of several words also as one ("Max Impact" is found by "maximpact"), a number
 * also without leading zeros.
 */
function wordsOf(text: string, field?: string): string[] {
  const words = fold(text).split(" ");
  if (field === "name" && words.length > 1) return [...words, words.join("")];
  if (field === "number" && text.startsWith("0")) return [text, withoutZeros(text)];
  return words;
}

function withoutZeros(digits: string): string {
  return digits.replace(/^0+(?=\d)/, "");
}

function makeNames(store: Store): Names {
  const index = new MiniSearch<Document>({
    fields: ["name", "number", "league"],
    storeFields: ["number"],
    tokenize: wordsOf,
    processTerm: (term) => term,
  });
  const stop = store.listen(({ topics }) => {
    if (topics.includes("people")) names.stale = true;
  });
  const names: Names = { index, stop, known: new Map(), stale: true };
  return names;
}

/**
 * Drops a store's names from memory; the next search reads them again. The index keeps the words of removed people
 * until it is cleaned up, and somebody erased must not stay in it.
 */
export function forgetNames(store: Store): void {
  namesOfStores.get(store)?.stop();
  namesOfStores.delete(store);
}

/** Adds new or changed athletes to the index, and removes deleted ones. */
function refresh(names: Names, db: ReadableDb): void {
  const gone = new Set(names.known.keys());
  for (const { id, name, number, league } of allAthletes(db)) {
    gone.delete(id);
    const text = `${name}\n${number}\n${league}`;
    const before = names.known.get(id);
    if (before === text) continue;
    if (before === undefined) names.index.add({ id, name, number, league });
    else names.index.replace({ id, name, number, league });
    names.known.set(id, text);
  }
  for (const id of gone) {
    names.index.discard(id);
    names.known.delete(id);
  }
  names.stale = false;
}

function indexOf(store: Store): MiniSearch<Document> {
  let names = namesOfStores.get(store);
  if (names === undefined) {
    names = makeNames(store);
    namesOfStores.set(store, names);
  }
  if (names.stale) refresh(names, store.db);
  return names.index;
}

/** Returns the typing slips forgiven in a word of that length; none in digits. */
function slipsOf(word: string): number | false {
  if (/^\d+$/.test(word) || word.length < 3) return false;
  return word.length < 5 ? 1 : 2;
}

/**
 * Returns a match's tier, lower is better. Digits: that bib, that number, that number but for leading zeros, numbers
 * that begin so, others.
 */
function tierOf(query: string, found: SearchResult, bib: number | null | undefined): number {
  if (!/^\d+$/.test(query)) {
    const asTyped = found.queryTerms.every((word) => found.terms.some((term) => term.startsWith(word)));
    return asTyped ? 0 : 1;
  }
  const number = String(found.number);
  if (bib === Number(query)) return 0;
  if (number === query) return 1;
  if (number !== "" && Number(number) === Number(query)) return 2;
  return number.startsWith(query) ? 3 : 4;
}

/** The athletes on today's list, with their bibs. */
export type Listed = ReadonlyMap<Athlete["id"], { readonly bib: number | null }>;

/**
 * Finds athletes by part of a name, number, league or bib, best first; of equal matches, those on the list come first.
 * Accents, letter case and a slip or two are forgiven.
 */
export function findAthletes(store: Store, query: string, listed: Listed): number[] {
  const words = fold(query).split(" ").slice(0, mostWords).join(" ");
  const ranked = lookUp(indexOf(store), words).map((result) => ({
    id: Number(result.id),
    tier: tierOf(words, result, listed.get(Number(result.id))?.bib),
    away: listed.has(Number(result.id)) ? 0 : 1,
    score: result.score,
  }));
  ranked.sort((a, b) => a.tier - b.tier || a.away - b.away || b.score - a.score || a.id - b.id);
  return withBib(words, listed, [...new Set(ranked.map(({ id }) => id))]);
}

/** Finds athletes with every word, or else with some of them. A number is also tried without leading zeros. */
function lookUp(index: MiniSearch<Document>, words: string): SearchResult[] {
  const options = { prefix: true, fuzzy: slipsOf, boost: { name: 2, number: 2 } };
  const bare = { queries: [withoutZeros(words)], fields: ["number"], prefix: false };
  const query = /^0\d+$/.test(words) ? { combineWith: "OR" as const, queries: [words, bare] } : words;
  const all = index.search(query, { ...options, combineWith: "AND" });
  return all.length > 0 ? all : index.search(words, { ...options, combineWith: "OR" });
}

/** Puts the athlete with that bib first, even when neither name nor number has those digits. */
function withBib(query: string, listed: Listed, ids: readonly number[]): number[] {
  if (!/^\d{1,4}$/.test(query)) return [...ids];
  const holder = [...listed].find(([, { bib }]) => bib === Number(query))?.[0];
  return holder === undefined ? [...ids] : [holder, ...ids.filter((id) => id !== holder)];
}
