import { type AgilityParameters, agility } from "../../../electron/domain/tests/agility/protocol.ts";
import type { TestFace } from "../face.ts";
import { Cross } from "./Cross.tsx";
import { bothWays, example, lines, numbers, settings, summary, withSettings } from "./rules.ts";
import { agilityTool } from "./tool.tsx";

/** The windows' part of the quadrant jump. */
export const agilityFace: TestFace<"agility"> = {
  live: agilityTool,
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
