import { expect, test } from "vitest";
import { noticesText, partsOfProgram } from "../../../resources/packaging/notices.ts";

test("the notices name every package once, in order, each with its licence", () => {
  const parts = partsOfProgram();
  const names = parts.map(({ name, version }) => `${name}@${version}`);
  expect(names).toEqual([...new Set(names)].sort());
  expect(names.length).toBeGreaterThan(50);
  for (const name of ["better-sqlite3", "react", "zod", "electron-log", "fflate"]) {
    expect(parts.some((part) => part.name === name)).toBe(true);
  }
  for (const { name, licence } of parts) expect(licence, name).not.toBe("");
  // What only builds or tests the program is not part of it.
  for (const name of ["vitest", "electron-builder", "@playwright/test"]) {
    expect(parts.some((part) => part.name === name)).toBe(false);
  }
});

test("the same packages give the same text, with nothing of the machine or the day in it", () => {
  const text = noticesText(partsOfProgram(), "1.2.3");
  expect(noticesText(partsOfProgram(), "1.2.3")).toBe(text);
  expect(text).not.toContain(process.cwd());
  expect(text).not.toContain(new Date().toISOString().slice(0, 10));
  expect(text).toContain("Tapeline 1.2.3 is built from the work of others.");
});
