import { describe, expect, test } from "vitest";
import { z } from "zod";
import { definitionOf, testCodes } from "../../electron/domain/tests/registry.ts";
import { filesOf, textsOf } from "./word-files.ts";

/** Other languages have every key that English has (`locales.test.ts`). */
const english = textsOf(filesOf("en"));

function has(key: string): boolean {
  return english.has(key) || english.has(`${key}_other`);
}

/** What every test's file has to say, as `renderer/app/testWords.ts` lists it, and what its face says of it. */
const ofEvery = [
  ...["name", "inText", "ability", "station", "letter", "skip", "up", "better", "hint", "summary", "asks"],
  ...["setUp", "run", "counts", "score", "stop"].map((part) => `rules.${part}`),
];

/** The kinds of a test's own taps, as its schema has them. */
function tapsOf(code: (typeof testCodes)[number]): string[] {
  const schema = z.toJSONSchema(definitionOf(code).live.what, { io: "input" });
  const shapes = (schema.oneOf ?? schema.anyOf ?? [schema]) as { properties: { kind: { const: string } } }[];
  return shapes.map(({ properties }) => properties.kind.const);
}

describe.each(testCodes)("the words of the %s", (code) => {
  const { keyed, protocol, sheet } = definitionOf(code);
  const missing = (words: readonly string[]) => words.filter((word) => !has(`${code}:${word}`));

  test("say what every test says", () => {
    expect(missing(ofEvery)).toEqual([]);
  });

  test.each(["en", "es"])("have both names where a station is chosen, in %s", (language) => {
    const words = textsOf(filesOf(language));
    const [ability, name, station] = ["ability", "name", "station"].map((word) =>
      words.get(`${code}:${word}`),
    );
    expect(station?.toLowerCase()).toBe(`${ability}: ${name}`.toLowerCase());
    expect(station?.startsWith(`${ability}: `)).toBe(true);
  });

  test("name each field that is keyed, and each choice", () => {
    const { choice } = keyed;
    const states = choice === null ? [{}] : choice.options.map((option) => ({ [choice.name]: option }));
    const fields = states.flatMap((typed) => keyed.fields(typed, protocol.slotSize(protocol.defaults)));
    expect(fields.length).toBeGreaterThan(0);
    expect(missing(fields.map(({ name }) => `field.${name}`))).toEqual([]);
    const choices = choice === null ? [] : ["label", ...choice.options];
    expect(missing(choices.map((word) => `choice.${choice?.name}.${word}`))).toEqual([]);
  });

  test("name each tap, so that it can be taken back", () => {
    expect(tapsOf(code).length).toBeGreaterThan(0);
    expect(missing(tapsOf(code).map((kind) => `tap.${kind}`))).toEqual([]);
  });

  test("name each column that a sheet may have", () => {
    const read = sheet.columns.filter(({ kind }) => kind !== "written").map(({ name }) => name);
    const unnamed = read.filter(
      (name) => !english.has(`sheets:field.${name}`) && !has(`${code}:column.${name}`),
    );
    expect(unnamed).toEqual([]);
  });

  test("say a gain in each unit that one is told in", () => {
    const { unit } = protocol.grain;
    const told = unit === "s" ? ["seconds", "time"] : unit === "cm" ? ["cm", "in"] : [unit];
    expect(missing(told.map((each) => `gain.${each}`))).toEqual([]);
  });

  test("name each way of doing it, where there are several", () => {
    const ways = protocol.variants.length > 1 ? protocol.variants : [];
    expect(missing(ways.map((variant) => `choice.variant.${variant}`))).toEqual([]);
  });
});

test.each(testCodes)("reading the %s from a sheet asks for no other column than it names", (code) => {
  const { sheet } = definitionOf(code);
  const asked = new Set<string>();
  // Some say yes, some no: every reader is followed to its end or to its first refusal.
  for (const text of ["", "1", "no", "cw", "1:00"]) {
    const cells = (column: string) => {
      asked.add(column);
      return column === "unit" ? "" : text;
    };
    try {
      sheet.read(cells);
    } catch {
      // A refusal: what was asked up to it counts.
    }
  }
  const named = sheet.columns.map(({ name }) => name);
  expect(asked.size).toBeGreaterThan(0);
  expect([...asked].filter((column) => !named.includes(column))).toEqual([]);
});
