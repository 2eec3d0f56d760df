import { notTold } from "../domain/privacy/hierarchy.ts";
import { leagueSizes } from "../domain/privacy/quasi.ts";
import { protocolOf, testCodes } from "../domain/tests/registry.ts";
import { markColumns, type ProfileTest, quasiColumns, summaryColumns, unitOf } from "./sheets.ts";

/** Units and ways of doing a test, as columns may have them. */
export const units = [...new Set(testCodes.map(unitOf))];
export const variants = [...new Set(testCodes.flatMap((test) => protocolOf(test).variants))].filter(
  (variant) => variant !== "",
);

const id = {
  type: "string",
  title: "Row",
  description: "Random, made for this file alone. It says nothing about the athlete.",
  constraints: { required: true, unique: true, pattern: "[b-z]{10}" },
};
const test = { type: "string", title: "Test", constraints: { required: true, enum: [...testCodes] } };
const variant = {
  type: "string",
  title: "Way of doing the test",
  description: "Empty where there is only one. Results of different variants are never compared.",
  constraints: { enum: variants },
};
const unit = { type: "string", title: "Unit of the bounds", constraints: { required: true, enum: units } };

const quasiFields: Record<(typeof quasiColumns)[number], object> = {
  age_band: {
    type: "string",
    title: "Age band",
    description: "Age reached in the year of the day, in fixed bands of five years, unknown, or not told.",
    constraints: { required: true, pattern: `\\d+ to \\d+|unknown|${notTold}` },
  },
  category: {
    type: "string",
    title: "Category",
    description: "The category in which the athlete is compared, unknown, or not told.",
    constraints: { required: true, enum: ["women", "men", "open", "unknown", notTold] },
  },
  league_size: {
    type: "string",
    title: "Athletes of the athlete's league",
    description: "In fixed bands, or not told.",
    constraints: { required: true, enum: [...leagueSizes, notTold] },
  },
  quarter: {
    type: "string",
    title: "Calendar quarter of the day",
    description: "Or its year alone.",
    constraints: { required: true, pattern: "\\d{4}(-Q[1-4])?" },
  },
};

const low = {
  type: "number",
  title: "Lower bound",
  description: "The result is this or more. Empty: the lowest results, which have no lower bound.",
  constraints: { minimum: 0 },
};
const high = {
  type: "number",
  title: "Upper bound",
  description: "The result is less than this. Empty: the highest results, which have no upper bound.",
  constraints: { minimum: 0 },
};

const markFields: Record<(typeof markColumns)[number], object> = {
  ...{ id, test, variant, ...quasiFields },
  ...{ mark_low: low, mark_high: high, unit },
};

function bound(name: string, side: "low" | "high"): object {
  const { title } = side === "low" ? low : high;
  const description = "Of the intervals that the quartile lies in. Empty: there is no bound.";
  return {
    type: "number",
    title: `${name}: ${title.toLowerCase()}`,
    description,
    constraints: { minimum: 0 },
  };
}

const summaryFields: Record<(typeof summaryColumns)[number], object> = {
  test,
  variant,
  n: { type: "integer", title: "Results in this file", constraints: { required: true, minimum: 1 } },
  lower_quartile_low: bound("Lower quartile", "low"),
  lower_quartile_high: bound("Lower quartile", "high"),
  median_low: bound("Median", "low"),
  median_high: bound("Median", "high"),
  upper_quartile_low: bound("Upper quartile", "low"),
  upper_quartile_high: bound("Upper quartile", "high"),
  unit,
};

/** Table Schemas of the sheets, in the order of their columns. */
export const marksSchema = {
  fields: markColumns.map((name) => ({ name, ...markFields[name] })),
  missingValues: [""],
  primaryKey: "id",
};

export const summarySchema = {
  fields: summaryColumns.map((name) => ({ name, ...summaryFields[name] })),
  missingValues: [""],
};

/** Returns the schema of profiles.csv: a pair of bounds for each reported test. */
export function profilesSchema(tests: readonly ProfileTest[]) {
  const pairs = tests.flatMap(({ test: code, variant: way, columns }) => {
    const what = `${code}${way === "" ? "" : `, ${way}`}, in ${unitOf(code)}`;
    return [
      { name: columns[0], ...low, title: `${low.title} of ${what}` },
      { name: columns[1], ...high, title: `${high.title} of ${what}. Both bounds empty: no result` },
    ];
  });
  return {
    fields: [
      { name: "id", ...id },
      ...quasiColumns.map((name) => ({ name, ...quasiFields[name] })),
      ...pairs,
    ],
    missingValues: [""],
    primaryKey: "id",
  };
}
