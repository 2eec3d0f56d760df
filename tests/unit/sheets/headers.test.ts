import { describe, expect, test } from "vitest";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { wordsOf } from "../../../electron/sheets/header-words.ts";
import { columnsOf, guessKind, matchHeaders, sheetKinds } from "../../../electron/sheets/headers.ts";

describe("headers", () => {
  test("match in any case, with spaces, hyphens or underscores", () => {
    const { columns, unknown, missing } = matchHeaders("roster", [
      "LEAGUE",
      "Name",
      "Birth Year",
      "guardian-consent",
    ]);
    expect(Object.fromEntries(columns)).toEqual({ league: 0, name: 1, birth_year: 2, guardian_consent: 3 });
    expect({ unknown, missing }).toEqual({ unknown: [], missing: [] });
  });

  test("what is missing and what is unknown is told", () => {
    const { unknown, missing } = matchHeaders("roster", ["Crew", "name", "", "Shirt"]);
    expect({ unknown, missing }).toEqual({ unknown: ["Crew", "Shirt"], missing: ["league"] });
  });

  test("a mapping says it where the header does not, and may say otherwise", () => {
    const headers = ["Crew", "name", "Skates as", "number"];
    const { columns, unknown, missing } = matchHeaders("roster", headers, {
      league: "Crew",
      name: "Skates as",
    });
    expect(Object.fromEntries(columns)).toEqual({ league: 0, name: 2, number: 3 });
    expect({ unknown, missing }).toEqual({ unknown: ["name"], missing: [] });
  });

  test("a column that is mapped to one field no longer stands for another", () => {
    const { columns, missing } = matchHeaders("roster", ["league", "name", "number"], { name: "number" });
    expect(Object.fromEntries(columns)).toEqual({ league: 0, name: 2 });
    expect(missing).toEqual([]);
  });

  test.each([
    ["roster", "screen", "board"],
    ["results", "missed_at_end", "Off at end"],
    ["results", "extra_quadrants", "extra"],
    ["results", "line_touches", "touches"],
  ] as const)(
    "in a sheet of %s the column %s is found by its name of before, too: %s",
    (kind, now, before) => {
      for (const header of [now, before]) {
        expect(matchHeaders(kind, ["league", header]).columns.get(now), header).toBe(1);
        expect(matchHeaders(kind, ["league", header]).unknown, header).toEqual([]);
      }
      expect(() => matchHeaders(kind, [now, before])).toThrow(Refusal);
    },
  );

  test("two columns of one meaning are refused, and a mapping decides", () => {
    expect(() => matchHeaders("roster", ["league", "Name", "name"])).toThrow(Refusal);
    expect(matchHeaders("roster", ["league", "Name", "name"], { name: "name" }).columns.get("name")).toBe(2);
  });

  test.each([
    ["roster", ["Team", "Derby name", "#", "Born", "Gender", "Guardian", "Shares"]],
    ["roster", ["Liga", "Nombre derby", "Nº", "Año", "Género", "Tutor", "Comparte"]],
    ["roster", ["EQUIPO", "Patinadora", "Dorsal", "Fecha de nacimiento", "Sexo", "Permiso", "Compartir"]],
    ["roster", ["Club:", "Skater", "No.", "D.O.B.", "Category", "Consent?", "Share?"]],
    ["roster", ["Team", "Skater", "No.", "Born", "Plays as", "Guardian permission", "Shares"]],
    ["roster", ["Equipo", "Patinadora", "Nº", "Nacida", "Juega como", "Permiso tutor", "Comparte"]],
    ["roster", ["Liga", "Patinador", "Número", "Año", "Compite en", "Permiso del tutor/a", "Compartir"]],
  ] as const)("of a %s are known as people write them: %j", (kind, headers) => {
    const { columns, unknown } = matchHeaders(kind, headers);
    expect([...columns].map(([field, column]) => [column, field]).sort()).toEqual([
      [0, "league"],
      [1, "name"],
      [2, "number"],
      [3, "birth_year"],
      [4, "category"],
      [5, "guardian_consent"],
      [6, "share"],
    ]);
    expect(unknown).toEqual([]);
  });

  test("a derby name comes before a name, and a bib before a number where both are there", () => {
    const { columns, unknown } = matchHeaders("roster", ["League", "Name", "Derby name"]);
    expect({ column: columns.get("name"), unknown }).toEqual({ column: 2, unknown: ["Name"] });
    const spanish = matchHeaders("results", ["Liga", "Número", "Dorsal", "Prueba"]).columns;
    expect([spanish.get("number"), spanish.get("bib")]).toEqual([1, 2]);
  });

  test.each(sheetKinds)("no word heads two columns of a sheet: %s", (kind) => {
    const all = columnsOf[kind].flatMap((field) => wordsOf(kind, field));
    expect(all.filter((word, index) => all.indexOf(word) !== index)).toEqual([]);
    // Each column is found by its own name.
    for (const field of columnsOf[kind]) expect(matchHeaders(kind, [field]).columns.get(field)).toBe(0);
  });

  test("the columns of a sheet of kept-back rows are nothing unknown", () => {
    expect(matchHeaders("roster", ["league", "name", "line", "reason"]).unknown).toEqual([]);
  });

  test.each([
    ["results", ["test"], ["bib"]],
    ["results", ["league", "test"], ["number"]],
    ["results", ["bib"], ["test"]],
    ["results", ["league", "name", "test"], []],
    ["past", ["league", "test"], ["date", "mark", "number"]],
  ] as const)("%s with %j lacks %j", (kind, headers, missing) => {
    expect(matchHeaders(kind, headers).missing).toEqual(missing);
  });

  test.each([
    ["roster", ["league", "name", "number"]],
    ["results", ["bib", "Test", "reps", "time"]],
    ["past", ["league", "number", "date", "test", "mark"]],
    ["roster", ["something", "else"]],
  ])("a sheet is guessed to be a %s by %j", (kind, headers) => {
    expect(guessKind(headers)).toBe(kind);
  });
});
