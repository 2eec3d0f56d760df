import { useVariantName } from "../../../words/marks.ts";

/** How a test was done, to stand behind its name: " (on the knees)"; empty where there is only one way. */
export function useWayInBrackets(): (variant: string) => string {
  const variantName = useVariantName();
  return (variant) => (variant === "" ? "" : ` (${variantName(variant)})`);
}
