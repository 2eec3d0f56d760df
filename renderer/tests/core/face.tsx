import type { CoreParameters } from "../../../electron/domain/tests/core/protocol.ts";
import { timeText } from "../../../electron/domain/tests/time-text.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { useSay } from "../../words/say.ts";
import type { TestFace } from "../face.ts";
import css from "../Steps.module.css";
import { Drawing } from "./Drawing.tsx";
import { example, lines, numbers, stagesOf } from "./rules.ts";
import { coreTool } from "./tool.tsx";

/** The windows' part of the staged plank. */
export const coreFace: TestFace<"core"> = {
  live: coreTool,
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
          <span className={css.figure}>{formatTime(stage.from * 1000, false)}</span> {say(stage.sentence)}
        </li>
      ))}
    </ol>
  );
}
