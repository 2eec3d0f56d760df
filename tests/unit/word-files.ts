import { globSync, readFileSync } from "node:fs";
import type { Words } from "../../electron/domain/languages.ts";

const folder = new URL("../../resources/locales/", import.meta.url).pathname;

/** The files of a language by name, as they are written. */
export function filesOf(language: string): ReadonlyMap<string, Words> {
  const names = globSync(`${language}/*.json`, { cwd: folder }).sort();
  return new Map(
    names.map((name) => [
      name.slice(language.length + 1).replace(/\.json$/, ""),
      JSON.parse(readFileSync(folder + name, "utf8")),
    ]),
  );
}

/** Every text with its key: `station:entry.bib` → "Bib". */
export function textsOf(files: ReadonlyMap<string, Words>): ReadonlyMap<string, string> {
  return new Map([...files].flatMap(([name, words]) => flat(words, `${name}:`)));
}

function flat(words: Words, before: string): [string, string][] {
  return Object.entries(words).flatMap(([key, text]) =>
    typeof text === "string" ? [[before + key, text] as [string, string]] : flat(text, `${before}${key}.`),
  );
}

/** The names of the values that a text takes in, in the order of the alphabet. */
export function valuesIn(text: string): string[] {
  return [...text.matchAll(/\{\{(\w+)\}\}/g)].map(([, name = ""]) => name).sort();
}
