import { quantile } from "../statistics/quantile.ts";
import type { Span } from "./told.ts";

/** Returns the span of simulated days that a tenth of them lie below and a tenth above. */
export function spanOf(values: readonly number[]): Span {
  return { from: quantile(values, 0.1), middle: quantile(values, 0.5), until: quantile(values, 0.9) };
}

/** Returns the mean; 0 of nothing. */
export function meanOfAll(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
