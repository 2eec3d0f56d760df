import { bundleLimits } from "./limits.ts";
import { unreadable } from "./refused.ts";

const harmfulKeys: ReadonlySet<string> = new Set(["__proto__", "prototype", "constructor"]);

/**
 * Parses somebody else's JSON text before a schema checks it: not too long, not too deep, without keys special to
 * JavaScript. `name` is the file's, for the sentence.
 * @throws Refusal `bad-input`
 */
export function parseJson(name: string, text: string): unknown {
  const read = readJson(text, bundleLimits.jsonBytes);
  if (read === null) throw unreadable(name);
  return read.value;
}

/** The same for a file that no zip holds: null where it is no such text, or longer than `most`. */
export function readJson(text: string, most: number): { readonly value: unknown } | null {
  if (text.length > most || isTooDeep(text)) return null;
  let harmful = false;
  try {
    const value: unknown = JSON.parse(text, (key, part: unknown) => {
      harmful ||= harmfulKeys.has(key);
      return part;
    });
    return harmful ? null : { value };
  } catch {
    return null;
  }
}

/** True if a text is nested too deep. Counts characters, so that nothing deep is built and no text takes long. */
function isTooDeep(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at];
    if (quoted) {
      if (sign === "\\") at += 1;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === "[" || sign === "{") depth += 1;
    else if (sign === "]" || sign === "}") depth -= 1;
    if (depth > bundleLimits.jsonDepth) return true;
  }
  return false;
}
