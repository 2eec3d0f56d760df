import { fingerprint } from "./fingerprint.ts";
import { parseParameters, protocolOf, type TestCode } from "./registry.ts";

/**
 * The way back from a fingerprint: the parameters that it stands for. Undefined where it is none of this test and
 * variant, or of parameters that the test does not know.
 */
export function parametersOf(test: TestCode, variant: string, text: string): unknown {
  if (!protocolOf(test).variants.includes(variant)) return undefined;
  const name = variant === "" ? test : `${test}/${variant}`;
  if (!text.startsWith(`${name} `)) return undefined;
  const parts = text.slice(name.length + 1).split(/ (?=[A-Za-z]+=)/);
  const { data } = parseParameters(test, Object.fromEntries(parts.map(entryOf)));
  return data !== undefined && fingerprint(test, variant, data) === text ? data : undefined;
}

function entryOf(part: string): [string, unknown] {
  const [name = "", ...rest] = part.split("=");
  try {
    return [name, JSON.parse(rest.join("="))];
  } catch {
    // No parameter has such a value, so the test refuses it.
    return [name, undefined];
  }
}
