import { globSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import sentences from "../../resources/locales/en/sentences.json" with { type: "json" };

/** Keys put together when the program runs, with a star for each part of theirs that only then is known. */
const built = [
  "sheets.missing.*",
  "store.*",
  "stages.call.*",
  "stages.first.*",
  "stages.later.*",
  "stages.soon.*",
  "station.state.*",
  "station.leftOut.*",
  "station.otherVariant.*",
  "test.*.allBegun",
  "test.*.begun",
  "test.*.called",
  "test.*.first",
  "test.*.inHeat",
  "test.*.missing.*",
  "test.*.noiseSource",
  "test.*.taken",
];

/** What a test needs no words for: only one that takes several attempts can be begun or lack some of them. */
const ofSome = ["test.*.allBegun", "test.*.begun", "test.*.missing.*"];

const root = new URL("../../", import.meta.url).pathname;
const sources = globSync("electron/**/*.ts", { cwd: root })
  .filter((path) => path !== "electron/domain/words.ts")
  .map((path) => readFileSync(root + path, "utf8"));

/** Every `sentence(` of the sources with its first argument: a literal, a template, or neither. */
const calls = sources.flatMap((text) => [
  ...text.matchAll(/(?<![\w.])sentence\(\s*(?:"(?<key>[^"]+)"|`(?<template>[^`]*)`)?/g),
]);
const literals = new Set(calls.flatMap(({ groups }) => groups?.key ?? []));
const templates = new Set(
  calls.flatMap(({ groups }) => groups?.template?.replace(/\$\{(?:[^{}]|\{[^}]*\})*\}/g, "*") ?? []),
);

/** Whether a key is one that can be put together so: a star stands for one part. */
function isBuilt(key: string, template: string): boolean {
  const [parts, pattern] = [key.split("."), template.split(".")];
  return (
    parts.length === pattern.length && pattern.every((part, index) => part === "*" || part === parts[index])
  );
}

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

test("every key put together at run time is of a listed form that has words", () => {
  expect([...templates].sort()).toEqual([...built].sort());
  expect(built.filter((template) => ![...keys].some((key) => isBuilt(key, template)))).toEqual([]);
});

test.each(testCodes)("the %s has every sentence that is put together with a test's code", (code) => {
  const needed = built.filter((template) => template.startsWith("test.*.") && !ofSome.includes(template));
  expect(needed.length).toBeGreaterThan(4);
  expect(needed.map((template) => template.replace("*", code)).filter((key) => !keys.has(key))).toEqual([]);
});

test("no sentence is named in a way that this test cannot read", () => {
  expect(calls.filter(({ groups }) => groups?.key === undefined && groups?.template === undefined)).toEqual(
    [],
  );
});

test("no words are unused", () => {
  const used = (key: string) => literals.has(key) || built.some((template) => isBuilt(key, template));
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
