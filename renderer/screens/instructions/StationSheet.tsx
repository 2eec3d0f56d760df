import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import type { SheetLines } from "../../tests/face.ts";
import { faceOf, readParameters, useTexts } from "../../tests/registry.ts";
import { Help } from "./Help.tsx";
import { Part, Points } from "./Part.tsx";
import css from "./Sheet.module.css";

interface StationSheetProps {
  readonly test: TestCode;
  /** The parameters of the day. */
  readonly parameters: unknown;
}

/** Lays out the body of a station's page: how to set it up, run it, judge it and end it. */
export function StationSheet({ test, parameters }: StationSheetProps) {
  const { t } = useTranslation("instructions");
  const lines = useLines(test, parameters);
  return (
    <div className={css.station}>
      <SheetDrawing test={test} parameters={parameters} />
      <div className={css.columns}>
        <div className={css.column}>
          <Part title={t("head.setUp")}>
            <Points look="boxes" lines={lines.setUp} />
          </Part>
          <Part title={t("head.form")}>
            <Points lines={lines.form} />
          </Part>
          <Part title={t("head.stop")}>
            <p>{lines.stop}</p>
          </Part>
        </div>
        <div className={css.column}>
          <Part title={t("head.run")}>
            <Points look="numbers" lines={lines.run} />
          </Part>
          <Part title={t("head.mark")}>
            <p>{lines.mark}</p>
            <div className={css.example}>
              <h3>{t("head.example")}</h3>
              {lines.example.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          </Part>
        </div>
      </div>
      <Cautions />
      <Help />
    </div>
  );
}

/** Shows the drawing of a station's page. */
function SheetDrawing({ test, parameters }: StationSheetProps) {
  const { layout, Drawing } = faceOf(test).drawing;
  return (
    <figure className={css.figure} data-test={test} data-layout={layout}>
      <Drawing parameters={readParameters(test, parameters)} />
    </figure>
  );
}

/** The sentences under the headings of a station's sheet. */
interface StationLines extends SheetLines {
  readonly stop: string;
  readonly mark: string;
  readonly example: readonly string[];
}

/**
 * Returns the sentences of a station's sheet with the day's numbers; those that stand beside the entry too are the
 * same.
 */
function useLines(test: TestCode, parameters: unknown): StationLines {
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
