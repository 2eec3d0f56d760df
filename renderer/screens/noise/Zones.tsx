import { useTranslation } from "react-i18next";
import { clearChance, likelyChance } from "../../../electron/domain/statistics/change.ts";
import { normalQuantile } from "../../../electron/domain/statistics/normal.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useUnitWord } from "../../words/marks.ts";
import { useShowNumber } from "../../words/numbers.ts";
import type { TestNoise } from "./types.ts";
import css from "./Zones.module.css";

/** As on the board's tape: zones as long as the spreads of a difference that they cover. */
const length = 3.4;
const likely = normalQuantile(likelyChance);
const clear = normalQuantile(clearChance);

/** From which mark on a gain is likely, and from which clear, laid out from a middling mark. */
export function Zones({ told }: { readonly told: TestNoise }) {
  const { t } = useTranslation(["noise", "common"]);
  const writeDay = useWriteDay();
  const { typical, likelyFrom, clearFrom } = told;
  const show = useShowNumber();
  const word = useUnitWord()(typical.written.unit);
  const zones = [
    { zone: "noise", starts: typical.written.number, grow: likely },
    { zone: "likely", starts: likelyFrom?.number, grow: clear - likely },
    { zone: "clear", starts: clearFrom?.number, grow: length - clear },
  ] as const;
  return (
    <Stack gap={1}>
      <p className="small quiet">
        {typical.date === null ? t("from.example") : t("from.day", { date: writeDay(typical.date) })}
      </p>
      <ol className={css.lane}>
        {zones.map(({ zone, starts, grow }) => (
          <li key={zone} data-zone={zone} style={{ flexGrow: grow }}>
            <span className={css.bar} aria-hidden="true" />
            <strong className={css.starts}>{show(starts ?? "–")}</strong>
            {zone === "noise" && word !== "" && ` ${word}`}
            <span className={css.word}>{t(`zone.${zone}`)}</span>
          </li>
        ))}
      </ol>
    </Stack>
  );
}
