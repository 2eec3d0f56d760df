import { readFileSync } from "node:fs";
import { type Schema, Validator } from "@cfworker/json-schema";

function validatorOf(name: string): Validator {
  const file = new URL(`data-package/${name}.json`, import.meta.url);
  return new Validator(JSON.parse(readFileSync(file, "utf8")) as Schema, "4", false);
}

const packages = validatorOf("data-package");
const resources = validatorOf("data-resource");
const tables = validatorOf("tabular-data-resource");

/** What a descriptor breaks of the published schemas, by its own profile and those of its resources; empty when valid. */
export function standardTroubles(descriptor: { resources: readonly { profile?: string }[] }): string[] {
  const results = [
    packages.validate(descriptor),
    ...descriptor.resources.map((resource) =>
      (resource.profile === "tabular-data-resource" ? tables : resources).validate(resource),
    ),
  ];
  return results.flatMap(({ errors }) =>
    errors.map(({ instanceLocation, error }) => `${instanceLocation} ${error}`),
  );
}

interface Field {
  readonly name: string;
  readonly type: string;
  readonly constraints?: {
    readonly required?: boolean;
    readonly unique?: boolean;
    readonly enum?: readonly string[];
    readonly pattern?: string;
    readonly minimum?: number;
  };
}

/** What a sheet breaks of its own Table Schema: header, types and constraints. An empty field is a missing value. */
export function tableTroubles(fields: readonly Field[], sheet: readonly (readonly string[])[]): string[] {
  const [header = [], ...rows] = sheet;
  const wrongHeader =
    header.join() === fields.map(({ name }) => name).join() ? [] : [`header ${header.join()}`];
  const wrong = rows.flatMap((row, line) =>
    fields.flatMap((field, column) =>
      fits(field, row[column]) ? [] : [`line ${line + 2} ${field.name} ${row[column]}`],
    ),
  );
  const repeated = fields.flatMap(({ name, constraints }, column) => {
    const values = rows.map((row) => row[column]);
    return constraints?.unique === true && new Set(values).size < values.length ? [`${name} repeats`] : [];
  });
  return [...wrongHeader, ...wrong, ...repeated];
}

function fits({ type, constraints = {} }: Field, value: string | undefined): boolean {
  if (value === undefined) return false;
  if (value === "") return constraints.required !== true;
  if (constraints.enum !== undefined && !constraints.enum.includes(value)) return false;
  if (constraints.pattern !== undefined && !new RegExp(`^(?:${constraints.pattern})$`).test(value))
    return false;
  if (type === "number" && !/^-?\d+(\.\d+)?$/.test(value)) return false;
  if (type === "integer" && !/^-?\d+$/.test(value)) return false;
  return constraints.minimum === undefined || Number(value) >= constraints.minimum;
}
