import { type PushUpParameters, pushUp } from "../../../electron/domain/tests/push-up/protocol.ts";
import { completeValue } from "../example.ts";
import type { Setting, SheetLines, Texts } from "../face.ts";

type Translate = Texts<"push-up">;

export function numbers({ bpm, beatsPerRep, missesToStop }: PushUpParameters) {
  const seconds = Math.round((60_000 * beatsPerRep) / bpm) / 1000;
  return { bpm, beats: beatsPerRep, seconds, misses: missesToStop };
}

export function settings({ bpm, beatsPerRep, missesToStop }: PushUpParameters): readonly Setting[] {
  return [
    ["bpm", bpm],
    ["beatsPerRep", beatsPerRep],
    ["missesToStop", missesToStop],
  ];
}

export function summary(t: Translate, { bpm, beatsPerRep, missesToStop }: PushUpParameters): string {
  const seconds = Math.round((60_000 / bpm) * beatsPerRep) / 1000;
  return t("summary", { bpm, seconds, missesToStop });
}

export function lines(t: Translate, parameters: PushUpParameters): SheetLines {
  const values = numbers(parameters);
  const run = [t("sheet.run.judge"), t("sheet.run.count"), t("sheet.run.note")];
  return {
    setUp: [t("sheet.setUp.beat", values), t("sheet.setUp.variant")],
    run: [t("sheet.run.start"), t("rules.run", values), ...run],
    form: [t("sheet.form.short")],
  };
}

export function example(t: Translate, parameters: PushUpParameters): readonly string[] {
  const { missesToStop } = parameters;
  const seen = { how: "tally", reps: 20 + missesToStop, offAtEnd: missesToStop } as const;
  const mark = completeValue(pushUp.score(parameters, [seen]));
  return [t("sheet.example", { done: seen.reps, off: seen.offAtEnd, mark })];
}
