import { grainsOf, type Length } from "../../../electron/domain/length.ts";
import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import {
  peakPower,
  type VerticalAttempt,
  type VerticalParameters,
  vertical,
} from "../../../electron/domain/tests/vertical/protocol.ts";
import { formatLength, inUnit } from "../../../electron/domain/units.ts";
import { completeValue } from "../example.ts";
import type { SheetLines, TestFace, Texts } from "../face.ts";
import { changed } from "../settings.ts";
import { WallReach } from "./WallReach.tsx";

/** The windows' part of the vertical leap. */
export const verticalFace: TestFace<"vertical"> = {
  drawing: { layout: "picture", Drawing: WallReach },
  numbers: (parameters) => ({ ...parameters }),
  settings: ({ trials }) => [["trials", trials]],
  withSettings: changed,
  summary: (t, { trials }) => t("summary", { count: trials }),
  seen(t, { standingReach, touchReach }, lengths) {
    const [reach, touch] = [standingReach, touchReach].map((each) => formatLength(grainsOf(each), lengths));
    return t("seen.leap", { reach, touch, unit: t(`common:unit.${lengths}`) });
  },
  besides: (t, { bodyMass }) => (bodyMass === undefined ? null : t("mass", { mass: bodyMass / 1000 })),
  remark,
  asks: (t, { trials }) => t("asks", { count: trials }),
  lines,
  example,
};

/** Describes the power estimated from height and mass; never ranked, and nothing below zero. */
function remark(t: Texts<"vertical">, { bodyMass }: VerticalAttempt, mark: Mark): string | null {
  if (bodyMass === undefined || mark.state !== "complete") return null;
  const watts = Math.round(peakPower(mark.value, bodyMass) ?? 0);
  return watts <= 0 ? null : t("power", { watts });
}

type Translate = Texts<"vertical">;

function lines(t: Translate, { trials }: VerticalParameters): SheetLines {
  return {
    setUp: [t("sheet.setUp.tape"), t("sheet.setUp.floor")],
    run: [
      t("sheet.run.reach"),
      t("sheet.run.jump"),
      t("sheet.run.trials", { count: trials }),
      t("sheet.run.note"),
    ],
    form: [t("sheet.form.zero")],
  };
}

function example(t: Translate, parameters: VerticalParameters): readonly string[] {
  const reach = 219;
  const touches = [259, 262.5, 261, 260, 262, 258, 261.5, 260.5, 259.5, 258.5].slice(0, parameters.trials);
  const standingReach = centimetres(reach);
  const attempts = touches.map((touch) => ({ standingReach, touchReach: centimetres(touch) }));
  const value = completeValue(vertical.score(parameters, attempts));
  const values = {
    reach,
    touches: touches.join("; "),
    best: Math.max(...touches),
    mark: inUnit(vertical.grain, value),
  };
  return [t("sheet.example", values)];
}

function centimetres(count: number): Length {
  return { unit: "cm", halves: 2 * count };
}
