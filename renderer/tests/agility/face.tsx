import {
  type AgilityAttempt,
  type AgilityParameters,
  agility,
} from "../../../electron/domain/tests/agility/protocol.ts";
import { completeValue } from "../example.ts";
import type { Setting, SheetLines, TestFace, Texts } from "../face.ts";
import { changed } from "../settings.ts";
import { Cross } from "./Cross.tsx";

/** The windows' part of the quadrant jump. */
export const agilityFace: TestFace<"agility"> = {
  drawing: { layout: "pair", Drawing },
  numbers,
  settings,
  withSettings,
  summary,
  seen: (t, { direction, ...rest }) =>
    t("seen.jump", { direction: t(`choice.direction.${direction}`), ...rest }),
  alone: (t, parameters, seen) => ({
    written: agility.write(bothWays(parameters, seen), "cm"),
    what: t("alone"),
  }),
  begun: (t, [first, ...others]) =>
    first === undefined || others.length > 0 ? null : t(`begun.${first.direction}`),
  asks: (t, parameters) => t("asks", numbers(parameters)),
  lines,
  example,
};

/** Draws both directions around the cross, with its size. */
function Drawing({ parameters: { crossSize } }: { readonly parameters: AgilityParameters }) {
  return (
    <>
      <Cross direction="cw" size={crossSize} />
      <Cross direction="ccw" size={crossSize} />
    </>
  );
}

type Translate = Texts<"agility">;

function numbers({ crossSize, seconds, touchPenalty }: AgilityParameters) {
  const feet = Math.round(crossSize / 30.48) / 10;
  return { cm: crossSize / 10, feet, seconds, penalty: touchPenalty };
}

/** Returns the settings, with the side of the cross in cm. */
function settings({ seconds, crossSize, touchPenalty }: AgilityParameters): readonly Setting[] {
  return [
    ["seconds", seconds],
    ["crossSize", crossSize / 10],
    ["touchPenalty", touchPenalty],
  ];
}

function withSettings(parameters: AgilityParameters, some: readonly Setting[]): unknown {
  const inMillimetres = some.map(
    ([name, value]): Setting => [name, name === "crossSize" ? Math.round(value * 10) : value],
  );
  return changed(parameters, inMillimetres);
}

function summary(t: Translate, { seconds, crossSize, touchPenalty }: AgilityParameters): string {
  return t("summary", { seconds, cross: crossSize / 10, touchPenalty });
}

function lines(t: Translate, parameters: AgilityParameters): SheetLines {
  const values = numbers(parameters);
  return {
    setUp: [t("sheet.setUp.clock", values), t("sheet.setUp.see")],
    run: [
      t("sheet.run.practice"),
      t("sheet.run.start"),
      t("sheet.run.jump", values),
      t("sheet.run.cw"),
      t("sheet.run.ccw"),
      t("sheet.run.note"),
    ],
    form: [t("sheet.form.feet")],
  };
}

/** Returns the mark, in grains, of the same trial in both directions. */
function bothWays(parameters: AgilityParameters, seen: AgilityAttempt): number {
  const both = (["cw", "ccw"] as const).map((direction) => ({ ...seen, direction }));
  return completeValue(agility.score(parameters, both));
}

function example(t: Translate, parameters: AgilityParameters): readonly string[] {
  const cw = { direction: "cw", laps: 7, extra: 3, touches: 2 } as const;
  const ccw = { direction: "ccw", laps: 7, extra: 1, touches: 0 } as const;
  const { perUnit } = agility.grain;
  const [first, second] = [cw, ccw].map((seen) => bothWays(parameters, seen) / perUnit);
  const mark = completeValue(agility.score(parameters, [cw, ccw])) / perUnit;
  const penalty = parameters.touchPenalty;
  return [
    t("sheet.example.cw", { ...cw, penalty, trial: first }),
    t("sheet.example.ccw", { ...ccw, penalty, trial: second }),
    t("sheet.example.mark", { first, second, mark }),
  ];
}
