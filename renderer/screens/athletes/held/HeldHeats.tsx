import { useTranslation } from "react-i18next";
import { formatTime } from "../../../../electron/domain/units.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { useWriteTime } from "../../../words/dates.ts";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";

type Heat = HeldDay["heats"][number];

/** Lists the live heats in which the athlete had a lane, with every tap made for it. */
export function HeldHeats({ heats }: { readonly heats: readonly Heat[] }) {
  const { t } = useTranslation("held");
  return (
    <>
      <h3>{t("page.heats")}</h3>
      <ul className={css.heats}>
        {heats.map((heat) => (
          <li key={heat.id}>
            <OneHeat heat={heat} />
          </li>
        ))}
      </ul>
    </>
  );
}

function OneHeat({ heat }: { readonly heat: Heat }) {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const writeTime = useWriteTime();
  const writeTaps = useWriteTaps();
  const { test, lane, gathered_at, ended_at, ending, reason, taps } = heat;
  const head = t("page.heat", { test: testWord(test, "name"), lane, time: writeTime(gathered_at) });
  const off = ending === "called-off" ? "page.heatOff" : "page.heatEnded";
  const end = ended_at === null ? "" : `, ${t(off, { time: writeTime(ended_at), reason })}`;
  return (
    <>
      <span className="strong">
        {head}
        {end}.
      </span>{" "}
      {taps.length === 0 ? t("page.noTaps") : t("page.taps", { taps: writeTaps(taps) })}
    </>
  );
}

const kinds = [
  ...(["off", "on-again", "stop", "go", "landing", "touch", "count", "take", "false-start"] as const),
  ...(["rerun", "round", "not-finished", "reach", "enough", "aside", "undo", "sure"] as const),
];

/** Formats all taps in one line: kind, time by the heat's clock, and by whom. */
function useWriteTaps(): (taps: Heat["taps"]) => string {
  const { t } = useTranslation("held");
  return (taps) =>
    taps
      .map(({ kind, at_ms, tapped_by }) => {
        const known = kinds.find((each) => each === kind);
        const what = known === undefined ? kind : t(`page.tap.${known}`);
        return t("page.tapBy", { what, time: formatTime(at_ms, true), by: tapped_by });
      })
      .join("; ");
}
