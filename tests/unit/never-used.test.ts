import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { filesOf, textsOf } from "./word-files.ts";

/** The table of names in resources/locales/README.md, held against every text of both languages. */
const page = readFileSync(new URL("../../resources/locales/README.md", import.meta.url), "utf8");
const rows = (page.split("## What each thing is called")[1]?.split("\n## ")[0] ?? "")
  .split("\n")
  .filter((line) => line.startsWith("|"))
  .slice(2)
  .map((line) => line.split("|").map((cell) => cell.trim()));

function neverUsed(column: number): string[] {
  return rows.flatMap((cells) => (cells[column] ?? "").split(", ")).filter((word) => word !== "");
}

test.each([
  ["en", 2],
  ["es", 4],
] as const)("no text in %s uses a word that is never used", (language, column) => {
  const never = neverUsed(column);
  expect(never.length).toBeGreaterThan(15);
  const found = [...textsOf(filesOf(language))].flatMap(([key, text]) => {
    const word = never.find((each) => new RegExp(`(?<![\\p{L}{])${each}`, "iu").test(text));
    return word === undefined ? [] : [`${key}: “${word}” in “${text}”`];
  });
  expect(found).toEqual([]);
});
