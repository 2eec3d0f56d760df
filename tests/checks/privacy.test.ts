import { expect, test } from "vitest";
import { likenessOf, riskOf } from "../../electron/domain/privacy/risk.ts";

// The program's own measures on published tables. Another counter, written apart, is held against the same tables in
// tests/unit/privacy/counter.test.ts.

interface Patient {
  readonly known: readonly string[];
  readonly condition: string;
}

function patients(lines: string): Patient[] {
  return lines
    .trim()
    .split("\n")
    .map((line) => {
      const values = line.trim().split(/\s+/);
      return { known: values.slice(0, -1), condition: values.at(-1) ?? "" };
    });
}

const measures = (table: readonly Patient[]) =>
  likenessOf(
    table,
    ({ known }) => known.join("|"),
    ({ condition }) => condition,
  );

// Machanavajjhala et al. 2007, ACM TKDD 1(1), art. 3: twelve inpatients (rows from memory, measures recomputed).
const inpatients = patients(`
  13053 28 Russian heart
  13068 29 American heart
  13068 21 Japanese viral
  13053 23 American viral
  14853 50 Indian cancer
  14853 55 Russian heart
  14850 47 American viral
  14850 49 American viral
  13053 31 American cancer
  13053 37 Indian cancer
  13068 36 Japanese cancer
  13068 35 American cancer`);

test("inpatients as they are: everybody stands alone", () => {
  expect(measures(inpatients)).toEqual({ k: 1, classes: 12, l: 1, entropyL: 1 });
  expect(riskOf(inpatients.map(({ known }) => known.join("|")))).toEqual({
    ...{ records: 12, classes: 12, unique: 12, largest: 1, mean: 1 },
  });
});

test("their 4-anonymous release: the class of cancer alone has no diversity", () => {
  const release = inpatients.map(({ known: [zip = "", age = ""], condition }) => ({
    known: [
      zip.startsWith("130") ? "130**" : "1485*",
      Number(age) < 30 ? "<30" : Number(age) >= 40 ? ">=40" : "3*",
    ],
    condition,
  }));
  expect(measures(release)).toEqual({ k: 4, classes: 3, l: 1, entropyL: 1 });
  expect(riskOf(release.map(({ known }) => known.join("|")))).toEqual({
    ...{ records: 12, classes: 3, unique: 0, largest: 0.25, mean: 0.25 },
  });
});

// exp(H) of 2, 1 and 1 in four is 2^1.5 = 2.8284.
test("their 3-diverse release", () => {
  const release = inpatients.map(({ known: [zip = "", age = ""], condition }) => ({
    known: [`${zip.slice(0, 4)}*`, Number(age) <= 40 ? "<=40" : ">40"],
    condition,
  }));
  const { entropyL, ...counted } = measures(release);
  expect(counted).toEqual({ k: 4, classes: 3, l: 3 });
  expect(entropyL).toBeCloseTo(2 ** 1.5, 12);
});

// Sweeney 2002, Int J Uncertain Fuzz Knowl Syst 10(5): race, year of birth, sex, zip (rows from memory, measures counted).
test("the 2-anonymous table of eleven patients", () => {
  const table = patients(`
    Black 1965 m 0214* short-breath
    Black 1965 m 0214* chest-pain
    Black 1965 f 0213* hypertension
    Black 1965 f 0213* hypertension
    Black 1964 f 0213* obesity
    Black 1964 f 0213* chest-pain
    White 1964 m 0213* chest-pain
    White 1964 m 0213* obesity
    White 1964 m 0213* short-breath
    White 1967 m 0213* chest-pain
    White 1967 m 0213* chest-pain`);
  expect(measures(table)).toMatchObject({ k: 2, classes: 5, l: 1 });
  const { largest, mean, unique } = riskOf(table.map(({ known }) => known.join("|")));
  expect([largest, unique]).toEqual([0.5, 0]);
  expect(mean).toBeCloseTo(5 / 11, 12);
});

test("an empty table has no k, and no risk", () => {
  expect(measures([])).toEqual({ k: null, classes: 0, l: null, entropyL: null });
  expect(riskOf([])).toEqual({ records: 0, classes: 0, unique: 0, largest: 0, mean: 0 });
});
