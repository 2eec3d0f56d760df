import { useTranslation } from "react-i18next";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import css from "./TestMark.module.css";
import { outlines } from "./test-outlines.ts";

interface TestMarkProps {
  readonly test: TestCode;
  /** small 24 px (in a line of text), medium 36 px, large 56 px, hero 112 px. */
  readonly size?: "small" | "medium" | "large" | "hero";
  /** Writes the name beside the shape: what it measures ("Strength"), or the test itself ("Cadence push-up"). */
  readonly name?: "none" | "ability" | "test";
  /** filled: the sign beside words. painted: outlined like a court line, where the sign itself is the picture. */
  readonly look?: "filled" | "painted";
}

/**
 * The sign of one test: its line colour, its shape and its letter, so that no meaning hangs on colour alone. Use it
 * wherever a test appears. With `name="none"` the sign carries the name for those who don't see it.
 */
export function TestMark({ test, size = "medium", name = "none", look = "filled" }: TestMarkProps) {
  const { t } = useTranslation("common");
  const label = name === "test" ? t(`test.${test}.name`) : t(`test.${test}.ability`);
  return (
    <span className={css.mark} data-test={test} data-size={size} data-look={look}>
      <svg className={css.shape} viewBox="0 0 48 48" aria-hidden="true">
        <path d={outlines[test]} />
        <text x="24" y={test === "vertical" ? 40 : 33.5} data-test={test}>
          {t(`test.${test}.letter`)}
        </text>
      </svg>
      <span className={name === "none" ? "unseen" : undefined}>{label}</span>
    </span>
  );
}
