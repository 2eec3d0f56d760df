import { testCodes } from "../../../domain/protocols/protocol.ts";
import { protocolOf } from "../../../domain/protocols/registry.ts";
import { markColumns, summaryColumns } from "./sheets.ts";

const units = [...new Set(testCodes.map((test) => protocolOf(test).grain.unit))];
const variants = [...new Set(testCodes.flatMap((test) => protocolOf(test).variants))].filter(
  (variant) => variant !== "",
);

const test = { type: "string", title: "Test", constraints: { required: true, enum: [...testCodes] } };
const variant = {
  type: "string",
  title: "Way of doing the test",
  description: "Empty where there is only one. Marks of different variants never compare.",
  constraints: { enum: variants },
};
const unit = { type: "string", title: "Unit of the mark", constraints: { required: true, enum: units } };

const markFields: Record<(typeof markColumns)[number], object> = {
  id: {
    type: "string",
    title: "Row",
    description: "Random, made for this bundle alone. It says nothing about the athlete.",
    constraints: { required: true, unique: true, pattern: "[b-z]{10}" },
  },
  test,
  variant,
  age_band: {
    type: "string",
    title: "Age band",
    description: "Age reached in the year of the day, in fixed bands of five years, or unknown.",
    constraints: { required: true, pattern: "\\d+ to \\d+|unknown" },
  },
  category: {
    type: "string",
    title: "Category",
    description: "How the athlete wants to be compared, or unknown.",
    constraints: { required: true, enum: ["women", "men", "open", "unknown"] },
  },
  quarter: {
    type: "string",
    title: "Calendar quarter of the day",
    constraints: { required: true, pattern: "\\d{4}-Q[1-4]" },
  },
  mark: {
    type: "number",
    title: "Mark",
    description: "In the unit beside it. Which way is better stands in protocols.json.",
    constraints: { required: true, minimum: 0 },
  },
  unit,
};

const quartile = { type: "number", description: "Only of ten rows and more.", constraints: { minimum: 0 } };

const summaryFields: Record<(typeof summaryColumns)[number], object> = {
  test,
  variant,
  n: { type: "integer", title: "Rows in marks.csv", constraints: { required: true, minimum: 1 } },
  lower_quartile: { title: "Lower quartile", ...quartile },
  median: { title: "Median", ...quartile },
  upper_quartile: { title: "Upper quartile", ...quartile },
  unit,
};

/** Table Schemas of the two sheets, in the order of their columns. */
export const marksSchema = {
  fields: markColumns.map((name) => ({ name, ...markFields[name] })),
  missingValues: [""],
  primaryKey: "id",
};

export const summarySchema = {
  fields: summaryColumns.map((name) => ({ name, ...summaryFields[name] })),
  missingValues: [""],
};
