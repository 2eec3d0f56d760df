import { units, variants } from "../bundle/schemas.ts";
import { bundleColumns, groupColumns, percentileColumns } from "../domain/reference-table/rows.ts";
import { groupCategories, leastOfGroup, percentilesTold } from "../domain/reference-table/table.ts";
import { testCodes } from "../domain/tests/registry.ts";

const required = { required: true };
const quarter = { type: "string", constraints: { ...required, pattern: "\\d{4}(-Q[1-4])?" } };

const groupFields: Record<(typeof groupColumns)[number], object> = {
  group: {
    type: "integer",
    title: "Number of the group",
    constraints: { ...required, unique: true, minimum: 1 },
  },
  test: { type: "string", title: "Test", constraints: { ...required, enum: [...testCodes] } },
  variant: {
    type: "string",
    title: "Way of doing the test",
    description: "Empty where there is only one.",
    constraints: { enum: variants },
  },
  rules: { type: "string", title: "Rules, as text: equal texts are equal rules", constraints: required },
  category: {
    type: "string",
    title: "Category",
    description: "unknown: not given; not told: left out of the bundles; all: everybody by these rules.",
    constraints: { ...required, enum: [...groupCategories] },
  },
  age_band: {
    type: "string",
    title: "Age band",
    description: "Age reached in the year of the test, in bands of five years, unknown, not told, or all.",
    constraints: { ...required, pattern: "\\d+ to \\d+|unknown|not told|all" },
  },
  marks: {
    type: "integer",
    title: "Results that count",
    description: "Of one hall no more than a third of the group, and than three halls of middle size have.",
    constraints: { ...required, minimum: leastOfGroup.marks },
  },
  halls: { type: "integer", title: "Halls", constraints: { ...required, minimum: leastOfGroup.halls } },
  counts_as: {
    type: "integer",
    title: "As many independent results would say as much",
    description: "Results of one hall are alike, and few halls say little about how halls differ.",
    constraints: { ...required, minimum: 1 },
  },
  first_quarter: { ...quarter, title: "First quarter, or year, of a result" },
  last_quarter: { ...quarter, title: "Last quarter, or year, of a result" },
  unit: { type: "string", title: "Unit of the bounds", constraints: { ...required, enum: units } },
  better: {
    type: "string",
    title: "Which results are better",
    constraints: { ...required, enum: ["higher", "lower"] },
  },
};

const percentileFields: Record<(typeof percentileColumns)[number], object> = {
  group: { type: "integer", title: "Number of the group", constraints: required },
  percentile: {
    type: "integer",
    title: "Percentile",
    description: "Of the value: where lower is better, the 5th is among the best.",
    constraints: { ...required, enum: [...percentilesTold] },
  },
  low: {
    type: "number",
    title: "It is this or more",
    description: "Empty: open.",
    constraints: { minimum: 0 },
  },
  high: {
    type: "number",
    title: "It is less than this",
    description: "Empty: open.",
    constraints: { minimum: 0 },
  },
};

function named<Name extends string>(columns: readonly Name[], fields: Record<Name, object>): object[] {
  return columns.map((name) => ({ name, ...fields[name] }));
}

/** Table Schemas of a reference table's sheets, in the order of their columns. */
export const groupsSchema = {
  fields: named(groupColumns, groupFields),
  missingValues: [""],
  primaryKey: "group",
};

export const percentilesSchema = {
  fields: named(percentileColumns, percentileFields),
  missingValues: [""],
  primaryKey: ["group", "percentile"],
  foreignKeys: [{ fields: "group", reference: { resource: "groups", fields: "group" } }],
};

export const bundlesSchema = {
  fields: named(bundleColumns, {
    sha256: {
      type: "string",
      title: "Hash over the hashes of a bundle's files",
      constraints: { ...required, unique: true, pattern: "[0-9a-f]{64}" },
    },
  }),
  missingValues: [""],
  primaryKey: "sha256",
};
