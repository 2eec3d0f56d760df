import type { Setting } from "./face.ts";

/** Returns parameters with some of their numbers changed, where each setting is a parameter itself. */
export function changed<Parameters extends object>(
  parameters: Parameters,
  settings: readonly Setting[],
): unknown {
  return { ...parameters, ...Object.fromEntries(settings) };
}
