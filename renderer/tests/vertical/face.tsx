import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import {
  peakPower,
  type VerticalAttempt,
  type VerticalParameters,
  vertical,
} from "../../../electron/domain/tests/vertical/protocol.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import { completeValue } from "../example.ts";
import type { SheetLines, TestFace, Texts } from "../face.ts";
import { changed } from "../settings.ts";
import { verticalTool } from "./tool.tsx";
import { WallReach } from "./WallReach.tsx";

/** The windows' part of the vertical leap. */
export const verticalFace: TestFace<"vertical"> = {
  live: verticalTool,
  drawing: { layout: "picture", Drawing: WallReach },
  numbers: (parameters) => ({ ...parameters }),
  settings: ({ trials }) => [["trials", trials]],
  withSettings: changed,
  summary: (t, { trials }) => t("summary", { count: trials }),
  seen(t, { standingReach, touchReach }, lengths) {
    const [reach, touch] = [formatLength(standingReach, lengths), formatLength(touchReach, lengths)];
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
  const standingReach = 2190;
  const touches = [2590, 2625, 2610, 2600, 2620, 2580, 2615, 2605, 2595, 2585].slice(0, parameters.trials);
  const attempts = touches.map((touchReach) => ({ standingReach, touchReach }));
  const value = completeValue(vertical.score(parameters, attempts));
  const values = {
    reach: standingReach / 10,
    touches: touches.map((touch) => touch / 10).join("; "),
    best: Math.max(...touches) / 10,
    mark: value / 10,
  };
  return [t("sheet.example", values)];
}
