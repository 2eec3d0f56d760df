import { useTranslation } from "react-i18next";
import type { Live, LiveLane } from "../live/tool.ts";
import css from "./Lane.module.css";

interface CoreLaneProps {
  readonly live: Live<"core">;
  readonly lane: LiveLane<"core">;
}

/** A lane that holds: all there is to do is to stop it, so that is what it says. A word: no sign of a state looks like a test's. */
export function CoreLaneView({ live }: CoreLaneProps) {
  const { t } = useTranslation("core");
  return <span className={css.lane}>{t(live.elapsedMs < 0 ? "live.ready" : "live.stop")}</span>;
}
