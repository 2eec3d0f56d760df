import { useTranslation } from "react-i18next";
import { type AgilityAttempt, agility, directions } from "../../../electron/domain/tests/agility/protocol.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { useShowNumber } from "../../words/numbers.ts";
import { BigKey } from "../live/BigKey.tsx";
import { storedOf } from "../live/stored.ts";
import type { LaneProps } from "../live/tool.ts";
import { rerunning } from "./control.ts";
import css from "./Trials.module.css";

/** Shows both directions side by side, their mean once both are done, and the trials that did not count. */
export function Trials({ live, lane }: LaneProps<"agility">) {
  const { t } = useTranslation("agility");
  const show = useShowNumber();
  const { results, lost } = lane.state;
  const counted = [
    ...(lane.in.prior as AgilityAttempt[]),
    ...storedOf("agility", lane).filter((seen) => seen !== null),
  ];
  const mark = counted.length === 0 ? null : agility.score(live.parameters, counted);
  const newest = results.at(-1)?.key;
  return (
    <Stack gap={2}>
      {directions.map((direction) => {
        const seen = counted.find((each) => each.direction === direction);
        return (
          <div key={direction} className={css.trial} data-in={seen !== undefined}>
            <strong>{t(`live.direction.${direction}`)}</strong>
            {seen === undefined ? (
              <span className="quiet">{t("live.trial.none")}</span>
            ) : (
              <>
                <span className={`numeral ${css.number}`}>{4 * seen.laps + seen.extra}</span>
                <span>{t("live.trial.touches", { count: seen.touches })}</span>
              </>
            )}
            {direction === newest && (
              <BigKey kind="quiet" hint="R" onPress={() => rerunning.set({ lane: lane.lane, direction })}>
                {t("live.rerun.do")}
              </BigKey>
            )}
          </div>
        );
      })}
      {mark?.state === "complete" && (
        <div className={css.mark} role="status">
          <strong>{t("live.trial.mark")}</strong>
          <span className={`numeral ${css.number}`}>
            {show(agility.write(mark.value, live.lengths).number)}
          </span>
        </div>
      )}
      {lost.length > 0 && (
        <div className={`small ${css.lost}`}>
          <strong>{t("live.lost.title")}</strong>
          <ul>
            {lost.map(({ direction, atMs, reason }) => (
              <li key={atMs}>
                {t("live.lost.line", {
                  direction: t(`live.direction.${direction}`),
                  reason: reason === "" ? t("live.lost.falseStart") : reason,
                })}
              </li>
            ))}
          </ul>
        </div>
      )}
    </Stack>
  );
}
