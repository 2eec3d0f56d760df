import type { TFunction } from "i18next";
import {
  type CoreParameters,
  core,
  type Stage,
  stageAt,
} from "../../../electron/domain/tests/core/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { say } from "../../words/say.ts";
import { completeValue } from "../example.ts";
import type { SheetLines, Texts } from "../face.ts";

type Translate = Texts<"core">;

export function numbers({ cycle }: CoreParameters) {
  return { cycle: formatTime(cycle * 1000, false) };
}

/** Returns the stages of the first round, in order. */
export function stagesOf(parameters: CoreParameters): Stage[] {
  const stages: Stage[] = [];
  for (let second = 0; second < parameters.cycle; second = stageAt(parameters, second).until)
    stages.push(stageAt(parameters, second));
  return stages;
}

export function lines(t: Translate, parameters: CoreParameters): SheetLines {
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

export function example(t: Translate, parameters: CoreParameters): readonly string[] {
  const held = 209_600;
  const written = core.write(completeValue(core.score(parameters, [{ held }])), "cm");
  const stage = written.note === undefined ? "" : say(written.note, t as unknown as TFunction<never>);
  return [t("sheet.example", { shown: formatTime(held, true), mark: written.number, stage })];
}
