import type { Setting } from "./face.ts";

/** Parameters with some of their numbers changed, where each setting is a parameter as it is. */
export function changed<Parameters extends object>(
  parameters: Parameters,
  settings: readonly Setting[],
): unknown {
  return { ...parameters, ...Object.fromEntries(settings) };
}
