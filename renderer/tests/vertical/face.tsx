import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import { peakPower, type VerticalAttempt } from "../../../electron/domain/tests/vertical/protocol.ts";
import { formatLength } from "../../../electron/domain/units.ts";
import type { TestFace, Texts } from "../face.ts";
import { changed } from "../settings.ts";
import { example, lines } from "./rules.ts";
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
