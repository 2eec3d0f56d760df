import type { TestCode } from "./registry.ts";

/** Returns JSON with sorted keys: equal values give equal text, whatever the order of their keys. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  return `{${entriesOf(value)
    .map(([key, part]) => `${JSON.stringify(key)}:${canonical(part)}`)
    .join(",")}}`;
}

/** Returns entries sorted by key, without undefined values. */
function entriesOf(value: object): [string, unknown][] {
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1));
}

/**
 * Returns the text that must be equal for two marks to compare: test, variant and parameters, for example `push-up/full
 * beatsPerRep=2 bpm=40 missesToStop=3`. Equal texts mean equal parameters and the other way round.
 */
export function fingerprint(code: TestCode, variant: string, parameters: unknown): string {
  const name = variant === "" ? code : `${code}/${variant}`;
  const isObject = typeof parameters === "object" && parameters !== null;
  const parts = isObject ? entriesOf(parameters).map(([key, part]) => `${key}=${canonical(part)}`) : [];
  return [name, ...parts].join(" ");
}
