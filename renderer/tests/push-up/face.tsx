import { type PushUpParameters, pushUp } from "../../../electron/domain/tests/push-up/protocol.ts";
import { completeValue } from "../example.ts";
import type { Setting, SheetLines, TestFace, Texts } from "../face.ts";
import { changed } from "../settings.ts";
import { PushUpForm } from "./Form.tsx";

/** The windows' part of the cadence push-up. */
export const pushUpFace: TestFace<"push-up"> = {
  drawing: { layout: "picture", Drawing: PushUpForm },
  numbers,
  settings,
  withSettings: changed,
  summary,
  seen: (t, seen) =>
    seen.how === "tally"
      ? t("seen.tally", { reps: seen.reps, off: seen.offAtEnd })
      : t("seen.cadences", { count: seen.cadences.length }),
  asks: (t, parameters) => t("asks", numbers(parameters)),
  lines,
  example,
};

type Translate = Texts<"push-up">;

function numbers({ bpm, beatsPerRep, missesToStop }: PushUpParameters) {
  const seconds = Math.round((60_000 * beatsPerRep) / bpm) / 1000;
  return { bpm, beats: beatsPerRep, seconds, misses: missesToStop };
}

function settings({ bpm, beatsPerRep, missesToStop }: PushUpParameters): readonly Setting[] {
  return [
    ["bpm", bpm],
    ["beatsPerRep", beatsPerRep],
    ["missesToStop", missesToStop],
  ];
}

function summary(t: Translate, { bpm, beatsPerRep, missesToStop }: PushUpParameters): string {
  const seconds = Math.round((60_000 / bpm) * beatsPerRep) / 1000;
  return t("summary", { bpm, seconds, missesToStop });
}

function lines(t: Translate, parameters: PushUpParameters): SheetLines {
  const values = numbers(parameters);
  const run = [t("sheet.run.judge"), t("sheet.run.count"), t("sheet.run.note")];
  return {
    setUp: [t("sheet.setUp.beat", values), t("sheet.setUp.variant")],
    run: [t("sheet.run.start"), t("rules.run", values), ...run],
    form: [t("sheet.form.short")],
  };
}

function example(t: Translate, parameters: PushUpParameters): readonly string[] {
  const { missesToStop } = parameters;
  const seen = { how: "tally", reps: 20 + missesToStop, offAtEnd: missesToStop } as const;
  const mark = completeValue(pushUp.score(parameters, [seen]));
  return [t("sheet.example", { done: seen.reps, off: seen.offAtEnd, mark })];
}
