import { useVariantName } from "../../../words/marks.ts";

/** Formats the variant to follow the test's name: " (on the knees)"; empty for a test with only one. */
export function useWayInBrackets(): (variant: string) => string {
  const variantName = useVariantName();
  return (variant) => (variant === "" ? "" : ` (${variantName(variant)})`);
}
