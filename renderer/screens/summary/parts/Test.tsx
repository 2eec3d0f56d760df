import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { useVariant } from "../useWords.ts";
import css from "./Everybody.module.css";

/** Shows a test's sign and name, and the variant where there is one. */
export function Test({ test, variant = "" }: { readonly test: TestCode; readonly variant?: string }) {
  const way = useVariant()(variant);
  return (
    <span className={css.test}>
      <TestMark test={test} size="small" name="ability" />
      {way !== "" && <span className="small quiet">{way}</span>}
    </span>
  );
}
