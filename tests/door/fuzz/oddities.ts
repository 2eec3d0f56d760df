import fc, { type Arbitrary } from "fast-check";

/** Texts that have broken programs: formulas, other directions, lone halves of signs, NUL, SQL, names of prototypes. */
export const oddTexts: readonly string[] = [
  ...[
    "",
    " ",
    "\u0000",
    "\ud800",
    "\udc00x",
    "\u202eabc",
    "a\u0301".repeat(300),
    "İstanbul",
    "ﬃ",
    "%",
    "_",
    "07",
  ],
  ...[
    "=1+1",
    "@SUM(A1)",
    "'; DROP TABLE mark; --",
    '"',
    "\\",
    "../../etc/passwd",
    "{{name}}",
    "$t(door.failed)",
  ],
  ...[
    "__proto__",
    "constructor",
    "toString",
    "hasOwnProperty",
    "NaN",
    "Infinity",
    "1e999",
    "null",
    "undefined",
  ],
  ...["9007199254740993", "-0", "１２", "٣", "\n", "\r\n\t", "\ufeff"],
];

/** Values of other kinds than were asked for. */
export const oddities: readonly unknown[] = [
  ...[null, true, false, 0, -0, -1, 0.5, 1e308, 2 ** 53, 2 ** 63, -(2 ** 53), 5e-324, 1e21],
  ...["", "1", "x".repeat(100_000), [], {}, [[]], [null], { length: 1e9 }, ownProto(), deep(2000)],
];

/** JSON texts that stand for what `JSON.stringify` can't say; put in the place of a string that names them. */
export const rawValues: Readonly<Record<string, string>> = {
  "raw:infinity": "1e999",
  "raw:minus": "-1e999",
  "raw:long": `0.${"1".repeat(5000)}`,
  "raw:nan": "NaN",
  "raw:twice": '{"athleteId":1,"athleteId":2,"__proto__":{"who":"organiser"}}',
};

function ownProto(): unknown {
  return JSON.parse('{"__proto__":{"admin":true},"constructor":{"prototype":{}}}');
}

/** Arrays in arrays, as deep as a parser by recursion still takes. */
function deep(levels: number): unknown {
  return JSON.parse(`${"[".repeat(levels)}${"]".repeat(levels)}`);
}

const replacements = fc.oneof(
  fc.constantFrom(...oddities),
  fc.constantFrom(...oddTexts),
  fc.constantFrom(...Object.keys(rawValues)),
  fc.jsonValue(),
);

/** The same value with one thing wrong somewhere: another kind, a key that is missing, a key too many. */
export function spoiled(value: unknown): Arbitrary<unknown> {
  const places = placesIn(value);
  return fc
    .tuple(fc.nat(places.length - 1), fc.constantFrom("replace", "drop", "add"), replacements)
    .map(([index, how, odd]) => changed(value, places[index] ?? [], how, odd));
}

type Place = readonly (string | number)[];

/** Every place in a value, the whole first; of long arrays a few. */
function placesIn(value: unknown, at: Place = []): Place[] {
  if (typeof value !== "object" || value === null || at.length > 5) return [at];
  const inside = Object.entries(value).slice(0, 20);
  return [at, ...inside.flatMap(([key, part]) => placesIn(part, [...at, key]))];
}

function changed(value: unknown, [key, ...rest]: Place, how: string, odd: unknown): unknown {
  if (key === undefined) return how === "add" ? withMore(value, odd) : odd;
  if (typeof value !== "object" || value === null) return odd;
  const entries = Object.entries(value).flatMap(([own, part]) => {
    if (own !== String(key)) return [[own, part]];
    return how === "drop" && rest.length === 0 ? [] : [[own, changed(part, rest, how, odd)]];
  });
  return Array.isArray(value) ? entries.map(([, part]) => part) : Object.fromEntries(entries);
}

function withMore(value: unknown, odd: unknown): unknown {
  if (typeof value !== "object" || value === null) return odd;
  return Array.isArray(value) ? [...value, odd] : { ...value, extra: odd, constructor: odd };
}
