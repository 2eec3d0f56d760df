import type { CoreParameters } from "../../../electron/domain/tests/core/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { useSay } from "../../words/say.ts";
import css from "../Steps.module.css";
import { stagesOf } from "./rules.ts";

/** Lists the stages, one per line. */
export function Steps({ parameters }: { readonly parameters: CoreParameters }) {
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
