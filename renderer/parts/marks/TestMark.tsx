import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import css from "./TestMark.module.css";
import { testShapes } from "./test-shapes.ts";

interface TestMarkProps {
  readonly test: TestCode;
  /** small 24 px (in a line of text), medium 36 px, large 56 px, hero 112 px. */
  readonly size?: "small" | "medium" | "large" | "hero";
  /** The name beside the shape: the ability ("Strength"), the test itself ("Cadence push-up"), or both, as a station. */
  readonly name?: "none" | "ability" | "test" | "station";
  /** filled: the symbol beside words. painted: outlined like a court line, where the symbol itself is the picture. */
  readonly look?: "filled" | "painted";
}

/**
 * The symbol of one test: its line colour, its shape and its letter, so that no meaning depends on colour alone. Use it
 * wherever a test appears. With `name="none"` the symbol carries the name for screen readers.
 */
export function TestMark({ test, size = "medium", name = "none", look = "filled" }: TestMarkProps) {
  const { outline, infield, letter } = testShapes[test];
  const testWord = useTestWords();
  const label = testWord(test, name === "test" ? "name" : name === "station" ? "station" : "ability");
  return (
    <span className={css.mark} data-test={test} data-size={size} data-look={look}>
      <svg className={css.shape} viewBox="0 0 48 48" aria-hidden="true">
        <path d={outline} />
        {infield !== undefined && <path className={css.infield} d={infield} />}
        <text x={letter.x} y={letter.y} fontSize={letter.size} data-ring={infield !== undefined}>
          {testWord(test, "letter")}
        </text>
      </svg>
      <span className={name === "none" ? "unseen" : undefined}>{label}</span>
    </span>
  );
}
