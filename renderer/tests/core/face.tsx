import type { TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import {
  type CoreParameters,
  core,
  type Stage,
  stageAt,
} from "../../../electron/domain/tests/core/protocol.ts";
import { timeText } from "../../../electron/domain/tests/time-text.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { say, useSay } from "../../words/say.ts";
import { completeValue } from "../example.ts";
import type { SheetLines, TestFace, Texts } from "../face.ts";
import css from "../Steps.module.css";
import stripCss from "../Strip.module.css";
import { CoreFigure } from "./Figure.tsx";

/** The windows' part of the staged plank. */
export const coreFace: TestFace<"core"> = {
  drawing: { layout: "strip", Drawing },
  Steps,
  numbers,
  // Only one staging exists, so nothing can be changed (core/protocol.ts).
  settings: () => [],
  withSettings: (parameters) => parameters,
  summary: (t, { cycle }) => t("summary", { cycle }),
  seen: (t, { held }) => t("seen.held", { time: timeText(held) }),
  asks: (t, parameters) => t("asks", numbers(parameters)),
  lines,
  example,
};

/** Lists the stages, one per line. */
function Steps({ parameters }: { readonly parameters: CoreParameters }) {
  const say = useSay();
  return (
    <ol className={css.steps}>
      {stagesOf(parameters).map((stage) => (
        <li key={stage.from}>
          <span className={`strong ${css.figure}`}>{formatTime(stage.from * 1000, false)}</span>{" "}
          {say(stage.sentence)}
        </li>
      ))}
    </ol>
  );
}

/**
 * Draws a round of stages and the first of the next, since they go on without end: side by side, each with its start
 * time. Scales with its font size.
 */
function Drawing({ parameters }: { readonly parameters: CoreParameters }) {
  const { t } = useTranslation("core");
  const say = useSay();
  return (
    <>
      <figcaption>{t("drawing.title")}</figcaption>
      <ol className={stripCss.strip} data-kind="stages" aria-label={t("drawing.title")}>
        {[...stagesOf(parameters), stageAt(parameters, parameters.cycle)].map((stage) => (
          <li key={stage.from} className={stripCss.stop}>
            <span className={`figures ${stripCss.time}`}>{formatTime(stage.from * 1000, false)}</span>
            <CoreFigure stage={stage.name} />
            <span>{say(stage.sentence)}</span>
          </li>
        ))}
      </ol>
    </>
  );
}

type Translate = Texts<"core">;

function numbers({ cycle }: CoreParameters) {
  return { cycle: formatTime(cycle * 1000, false) };
}

/** Returns the stages of the first round, in order. */
function stagesOf(parameters: CoreParameters): Stage[] {
  const stages: Stage[] = [];
  for (let second = 0; second < parameters.cycle; second = stageAt(parameters, second).until)
    stages.push(stageAt(parameters, second));
  return stages;
}

function lines(t: Translate, parameters: CoreParameters): SheetLines {
  return {
    setUp: [t("sheet.setUp.see"), t("sheet.setUp.clock")],
    run: [
      t("sheet.run.practice"),
      t("sheet.run.start"),
      t("sheet.run.call"),
      t("sheet.run.round", numbers(parameters)),
      t("sheet.run.end"),
      t("sheet.run.note"),
    ],
    form: [t("sheet.form.keep")],
  };
}

function example(t: Translate, parameters: CoreParameters): readonly string[] {
  const held = 209_600;
  const written = core.write(completeValue(core.score(parameters, [{ held }])), "cm");
  const stage = written.note === undefined ? "" : say(written.note, t as unknown as TFunction<never>);
  return [t("sheet.example", { shown: formatTime(held, true), mark: written.number, stage })];
}
