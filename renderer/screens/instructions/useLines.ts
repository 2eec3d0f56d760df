import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import type { SheetLines } from "../../tests/face.ts";
import { faceOf, readParameters, useTexts } from "../../tests/registry.ts";

/** The sentences under the headings of a station's sheet. */
export interface StationLines extends SheetLines {
  readonly stop: string;
  readonly mark: string;
  readonly example: readonly string[];
}

/**
 * Returns the sentences of a station's sheet with the day's numbers. A sentence that the rules beside the entry also
 * contain is the same one.
 */
export function useLines(test: TestCode, parameters: unknown): StationLines {
  const testWord = useTestWords();
  const textsOf = useTexts();
  const face = faceOf(test);
  const rules = readParameters(test, parameters);
  const numbers = face.numbers(rules);
  const rule = (part: "setUp" | "counts" | "stop" | "score") => testWord(test, `rules.${part}`, numbers);
  const { setUp, run, form } = face.lines(textsOf(test), rules);
  return {
    setUp: [rule("setUp"), ...setUp],
    run,
    form: [rule("counts"), ...form],
    stop: rule("stop"),
    mark: rule("score"),
    example: face.example(textsOf(test), rules),
  };
}
