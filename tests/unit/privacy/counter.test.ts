import { expect, test } from "vitest";
import { countClasses } from "./counter.ts";

// The counter that judges written bundles is itself judged by published tables.

function table(columns: string, lines: string): Record<string, string>[] {
  const names = columns.split(" ");
  return lines
    .trim()
    .split("\n")
    .map((line) => {
      const values = line.trim().split(/\s+/);
      return Object.fromEntries(names.map((name, index) => [name, values[index] ?? ""]));
    });
}

// Machanavajjhala et al. 2007, ACM TKDD 1(1), art. 3: twelve inpatients (rows from memory, measures recomputed).
const inpatients = table(
  "zip age nationality condition",
  `13053 28 Russian heart
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
   13068 35 American cancer`,
);

test("the raw table of inpatients is 1-anonymous", () => {
  expect(countClasses(inpatients, ["zip", "age", "nationality"], "condition")).toMatchObject({ k: 1, l: 1 });
});

test("its 4-anonymous release is not diverse: the third class has cancer only", () => {
  const release = inpatients.map(({ zip = "", age = "", condition = "" }) => ({
    zip: zip.startsWith("130") ? "130**" : "1485*",
    age: Number(age) < 30 ? "<30" : Number(age) >= 40 ? ">=40" : "3*",
    condition,
  }));
  expect(countClasses(release, ["zip", "age"], "condition")).toEqual({ k: 4, l: 1, classes: 3 });
});

test("its 3-diverse release", () => {
  const release = inpatients.map(({ zip = "", age = "", condition = "" }) => ({
    zip: `${zip.slice(0, 4)}*`,
    age: Number(age) <= 40 ? "<=40" : ">40",
    condition,
  }));
  expect(countClasses(release, ["zip", "age"], "condition")).toEqual({ k: 4, l: 3, classes: 3 });
});

// Sweeney 2002, Int J Uncertain Fuzz Knowl Syst 10(5): eleven patients (rows from memory, measures counted).
test("the 2-anonymous table of patients", () => {
  const patients = table(
    "race born sex zip problem",
    `Black 1965 m 0214* short-breath
     Black 1965 m 0214* chest-pain
     Black 1965 f 0213* hypertension
     Black 1965 f 0213* hypertension
     Black 1964 f 0213* obesity
     Black 1964 f 0213* chest-pain
     White 1964 m 0213* chest-pain
     White 1964 m 0213* obesity
     White 1964 m 0213* short-breath
     White 1967 m 0213* chest-pain
     White 1967 m 0213* chest-pain`,
  );
  expect(countClasses(patients, ["race", "born", "sex", "zip"], "problem")).toEqual({
    k: 2,
    l: 1,
    classes: 5,
  });
});
