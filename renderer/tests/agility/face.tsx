import { agility } from "../../../electron/domain/tests/agility/protocol.ts";
import type { TestFace } from "../face.ts";
import { Drawing } from "./Drawing.tsx";
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
