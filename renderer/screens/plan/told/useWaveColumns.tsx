import { useTranslation } from "react-i18next";
import type { Span } from "../../../../electron/domain/plan/told.ts";
import { type Column, column, numberColumn } from "../../../parts/layout/DataTable.tsx";
import type { DayClock } from "../clock.ts";
import type { WaveLine } from "./waves.ts";

/** Returns the columns of the timetable, the same on the screen and on paper. */
export function useWaveColumns(clock: DayClock): readonly Column<WaveLine>[] {
  const { t } = useTranslation("plan");
  const write = (span: Span) => {
    const { from, until } = clock.span(span);
    return from === until ? from : t("end.span", { from, until });
  };
  return [
    column("league", t("waves.league"), "auto", ({ league, place, places }) =>
      places === 1 ? league : t("waves.ofLeague", { league, place, places }),
    ),
    numberColumn("athletes", t("waves.athletes"), "7.5rem", ({ athletes }) => athletes.length),
    numberColumn("at", t("waves.at"), "8rem", ({ at }) => <strong>{clock.time(at)}</strong>),
    numberColumn("start", t("waves.start"), "11rem", ({ firstStart }) => write(firstStart)),
    numberColumn("done", t("waves.done"), "11rem", ({ lastDone }) => write(lastDone)),
  ];
}
