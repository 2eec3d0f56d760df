import { useTranslation } from "react-i18next";
import type { Live, LiveLane } from "../live/tool.ts";
import css from "./Lane.module.css";

interface CoreLaneProps {
  readonly live: Live<"core">;
  readonly lane: LiveLane<"core">;
}

/** A lane that holds: all there is to do is to stop it, so that is what it says. */
export function CoreLaneView({ live }: CoreLaneProps) {
  const { t } = useTranslation("core");
  return (
    <span className={css.lane}>
      <svg className={css.sign} viewBox="0 0 24 24" aria-hidden="true">
        <path d="M4 4h16v16H4z" />
      </svg>
      {t(live.elapsedMs < 0 ? "live.ready" : "live.stop")}
    </span>
  );
}
