import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import { useVariant } from "../useWords.ts";
import css from "./Everybody.module.css";

/** A test's sign and name, and how it was done where that matters. */
export function Test({ test, variant = "" }: { readonly test: TestCode; readonly variant?: string }) {
  const way = useVariant()(variant);
  return (
    <span className={css.test}>
      <TestMark test={test} size="small" name="ability" />
      {way !== "" && <span className="small quiet">{way}</span>}
    </span>
  );
}
