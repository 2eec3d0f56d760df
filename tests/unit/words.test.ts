import { globSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import sentences from "../../resources/locales/en/sentences.json" with { type: "json" };

/** Keys put together when the program runs: every one that starts like this counts as used. */
const builtPrefixes = [
  "stages.first.",
  "stages.later.",
  "marks.missing.",
  "sheets.missing.",
  "record.taken.",
  "store.",
  "station.state.",
  "station.leftOut.",
  "station.first.",
  "station.otherVariant.",
  "overview.called.",
  "noise.source.",
  "erase.inHeat.",
];

const root = new URL("../../", import.meta.url).pathname;
const sources = globSync("electron/**/*.ts", { cwd: root })
  .filter((path) => path !== "electron/domain/words.ts")
  .map((path) => readFileSync(root + path, "utf8"));

/** Every `sentence(` of the sources with its first argument: a literal, the start of a template, or neither. */
const calls = sources.flatMap((text) => [
  ...text.matchAll(/(?<![\w.])sentence\(\s*(?:"(?<key>[^"]+)"|`(?<prefix>[^`$]*)\$\{)?/g),
]);
const literals = new Set(calls.flatMap(({ groups }) => groups?.key ?? []));
const prefixes = new Set(calls.flatMap(({ groups }) => groups?.prefix ?? []));

function keysOf(value: object, before = ""): string[] {
  return Object.entries(value).flatMap(([name, part]) =>
    typeof part === "object"
      ? keysOf(part, `${before}${name}.`)
      : [before + name.replace(/_(?:one|other)$/, "")],
  );
}
const keys = new Set(keysOf(sentences));

test("every sentence named in the sources has words", () => {
  expect(literals.size).toBeGreaterThan(30);
  expect([...literals].filter((key) => !keys.has(key))).toEqual([]);
});

test("every key put together at run time starts with a listed prefix that has words", () => {
  expect([...prefixes].sort()).toEqual([...builtPrefixes].sort());
  expect(builtPrefixes.filter((prefix) => ![...keys].some((key) => key.startsWith(prefix)))).toEqual([]);
});

test("no sentence is named in a way that this test cannot read", () => {
  expect(calls.filter(({ groups }) => groups?.key === undefined && groups?.prefix === undefined)).toEqual([]);
});

test("no words are unused", () => {
  const used = (key: string) => literals.has(key) || builtPrefixes.some((prefix) => key.startsWith(prefix));
  expect([...keys].filter((key) => !used(key))).toEqual([]);
});

test("every counted sentence has its two forms", () => {
  const written = fullKeysOf(sentences);
  const counted = new Set(
    written.filter((key) => /_(?:one|other)$/.test(key)).map((key) => key.replace(/_\w+$/, "")),
  );
  const missing = [...counted]
    .flatMap((key) => [`${key}_one`, `${key}_other`])
    .filter((key) => !written.includes(key));
  expect(missing).toEqual([]);
});

/** Keys with the ending that tells one from many. */
function fullKeysOf(value: object, before = ""): string[] {
  return Object.entries(value).flatMap(([name, part]) =>
    typeof part === "object" ? fullKeysOf(part, `${before}${name}.`) : [before + name],
  );
}
