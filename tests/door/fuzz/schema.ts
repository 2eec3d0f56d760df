import fc, { type Arbitrary } from "fast-check";
import type { Hints } from "./hints.ts";
import { oddTexts } from "./oddities.ts";
import { tapsOf, unknownOf } from "./seen.ts";

/** What is looked at of a zod 4 schema: its kind and its parts. Nothing that zod does not say of itself. */
interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, Schema>>;
  readonly innerType?: Schema;
  readonly element?: Schema;
  readonly keyType?: Schema;
  readonly valueType?: Schema;
  readonly in?: Schema;
  readonly left?: Schema;
  readonly right?: Schema;
  readonly options?: readonly Schema[];
  readonly items?: readonly Schema[];
  readonly entries?: Readonly<Record<string, unknown>>;
  readonly values?: readonly unknown[];
  readonly format?: string;
  readonly checks?: readonly { readonly _zod: { readonly def: Check } }[];
}

interface Check {
  readonly check: string;
  readonly format?: string;
  readonly value?: number;
  readonly minimum?: number;
  readonly maximum?: number;
}

export interface Schema {
  readonly _zod: { readonly def: Definition };
}

export function isSchema(value: unknown): value is Schema {
  return typeof value === "object" && value !== null && "_zod" in value;
}

/** Values that a schema mostly takes, with what stands in the hall mixed in by the names of keys. */
export function valuesOf(schema: Schema, hints: Hints, key = ""): Arbitrary<unknown> {
  // A bib is a number in the store and a text where it is typed.
  const isText = schema._zod.def.type === "string";
  const known = hints
    .known(key)
    .map((value) => (isText && typeof value === "number" ? String(value) : value));
  const plain = plainValues(schema._zod.def, hints, key);
  if (known.length === 0) return plain;
  return fc.oneof({ weight: 6, arbitrary: fc.constantFrom(...known) }, { weight: 1, arbitrary: plain });
}

function plainValues(definition: Definition, hints: Hints, key: string): Arbitrary<unknown> {
  switch (definition.type) {
    case "object":
      return objects(definition.shape ?? {}, hints);
    case "string":
      return texts(definition);
    case "number":
      return numbers(definition);
    case "boolean":
      return fc.boolean();
    case "enum":
      return fc.constantFrom(...Object.values(definition.entries ?? {}));
    case "literal":
      return fc.constantFrom(...(definition.values ?? []));
    case "array":
      return arrays(definition, hints, key);
    case "record":
      return records(definition, hints);
    case "union":
      return fc.oneof(...(definition.options ?? []).map((option) => valuesOf(option, hints, key)));
    case "tuple":
      return fc.tuple(...(definition.items ?? []).map((item) => valuesOf(item, hints, key)));
    case "optional":
    case "default":
    case "prefault":
      return orElse(undefined, inner(definition, hints, key));
    case "nullable":
      return orElse(null, inner(definition, hints, key));
    case "unknown":
    case "any":
      return unknownOf(hints, key);
    case "undefined":
    case "void":
      return fc.constant(undefined);
    case "null":
      return fc.constant(null);
    default:
      return inner(definition, hints, key);
  }
}

/** What a schema that wraps another takes. @throws for a kind that this walk does not know, so that none is passed over */
function inner(definition: Definition, hints: Hints, key: string): Arbitrary<unknown> {
  const schema = definition.innerType ?? definition.in ?? definition.left;
  if (schema === undefined) throw new Error(`The fuzz does not know the schema kind ${definition.type}.`);
  return valuesOf(schema, hints, key);
}

function orElse(value: unknown, arbitrary: Arbitrary<unknown>): Arbitrary<unknown> {
  return fc.oneof(arbitrary, fc.constant(value));
}

function objects(shape: Readonly<Record<string, Schema>>, hints: Hints): Arbitrary<unknown> {
  const parts = Object.entries(shape).map(([key, schema]) => [key, valuesOf(schema, hints, key)] as const);
  const made = fc.record(Object.fromEntries(parts));
  // What was tapped and its detail belong together.
  const whole = isOfAnyTap(shape)
    ? fc.tuple(made, tapsOf(hints)).map(([rest, tap]) => ({ ...rest, ...tap }))
    : made;
  return whole.map((values) =>
    Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)),
  );
}

/** At the door a tap's detail is anything; which details go with which kind the domain knows. */
function isOfAnyTap({ kind, detail }: Readonly<Record<string, Schema>>): boolean {
  return kind?._zod.def.type === "string" && detail !== undefined;
}

function limitOf({ checks }: Definition, name: string): number | undefined {
  const found = checks?.map(({ _zod }) => _zod.def).find(({ check }) => check === name);
  return found?.value ?? found?.minimum ?? found?.maximum;
}

function texts(definition: Definition): Arbitrary<unknown> {
  const formats = [definition.format, ...(definition.checks ?? []).map(({ _zod }) => _zod.def.format)];
  if (formats.includes("uuid") || formats.includes("guid")) return fc.uuid();
  if (formats.includes("date"))
    return fc.constantFrom("2026-11-14", "2024-02-29", "0001-01-01", "9999-12-31");
  if (formats.includes("regex"))
    return fc.string({ unit: fc.constantFrom(..."0123456789abcdef"), minLength: 64, maxLength: 64 });
  const minLength = limitOf(definition, "min_length") ?? 0;
  const maxLength = limitOf(definition, "max_length");
  const free = fc.string({ unit: "binary", minLength, maxLength: Math.min(maxLength ?? 60, 60) });
  const short = fc.string({ unit: "grapheme", minLength, maxLength: Math.max(minLength, 12) });
  const full = fc.constant("ß".repeat(Math.min(maxLength ?? 2000, 2000)));
  return fc.oneof({ weight: 6, arbitrary: short }, free, full, fc.constantFrom(...oddTexts));
}

function numbers(definition: Definition): Arbitrary<unknown> {
  const isWhole = (definition.checks ?? []).some(({ _zod }) => _zod.def.check === "number_format");
  const whole = isWhole || definition.format === "safeint";
  const min = limitOf(definition, "greater_than") ?? Number.MIN_SAFE_INTEGER;
  const max = limitOf(definition, "less_than") ?? Number.MAX_SAFE_INTEGER;
  const within = (value: number) => Math.min(Math.max(value, Math.ceil(min)), Math.floor(max));
  const wide = whole
    ? fc.integer({ min: within(-(2 ** 31)), max: within(2 ** 31 - 1) })
    : fc.double({ min, max, noNaN: true });
  const small = fc.integer({ min: within(-3), max: within(60) });
  return fc.oneof({ weight: 5, arbitrary: small }, wide, fc.constantFrom(min, max));
}

function arrays(definition: Definition, hints: Hints, key: string): Arbitrary<unknown> {
  if (definition.element === undefined) throw new Error("An array without elements.");
  const minLength = limitOf(definition, "min_length") ?? 0;
  const maxLength = Math.min(limitOf(definition, "max_length") ?? 6, 6);
  const each = valuesOf(definition.element, hints, key);
  const few = fc.array(each, { minLength, maxLength: Math.max(minLength, Math.min(maxLength, 2)) });
  return fc.oneof({ weight: 3, arbitrary: few }, fc.array(each, { minLength, maxLength }));
}

function records({ keyType, valueType }: Definition, hints: Hints): Arbitrary<unknown> {
  if (keyType === undefined || valueType === undefined) throw new Error("A record without keys or values.");
  const keys = fc.oneof(
    valuesOf(keyType, hints, "field"),
    fc.constantFrom("__proto__", "constructor", "toString"),
  );
  const entries = fc.array(fc.tuple(keys, valuesOf(valueType, hints, "header")), { maxLength: 4 });
  // Object.fromEntries makes an own key of "__proto__", as JSON.parse does.
  return entries.map((made) => Object.fromEntries(made as [string, unknown][]));
}
