import { useTranslation } from "react-i18next";
import { SettingsDialog } from "../given/SettingsDialog.tsx";
import { unusual } from "../given/typed.ts";
import { useSavePlan } from "../given/useSavePlan.ts";
import { useWhen } from "../given/useWhen.ts";
import type { LeagueTime, Planned } from "../types.ts";

interface LeagueTimesDialogProps {
  readonly planned: Planned;
  readonly times: readonly LeagueTime[];
  readonly onClose: () => void;
}

/** Asks whether leagues are to come at other times, each beside the time it has now, and saves these in the plan. */
export function LeagueTimesDialog({ planned, times, onClose }: LeagueTimesDialogProps) {
  const { t } = useTranslation("plan");
  const when = useWhen();
  const saving = useSavePlan(planned, onClose);
  const leagueNow = ({ league }: LeagueTime) => planned.leagues.find((each) => each.league === league);
  const says = (time: LeagueTime) => {
    const [league, before] = [time.league, leagueNow(time)];
    const isSame = before === undefined || (before.from === time.from && before.until === time.until);
    return isSame
      ? t("gains.asBefore", { league, when: when(time) })
      : t("gains.instead", { league, when: when(time), before: when(before) });
  };
  function save(): void {
    const leagues = planned.leagues.map((each) => ({
      ...each,
      ...times.find(({ league }) => league === each.league),
    }));
    saving.save({ leagues: unusual(leagues, planned.begins) });
  }
  return (
    <SettingsDialog title={t("gains.useTitle")} saving={saving} onSave={save} onClose={onClose}>
      <ul>
        {times.map((time) => (
          <li key={time.league}>{says(time)}</li>
        ))}
      </ul>
      <p className="quiet">{t("gains.tell")}</p>
    </SettingsDialog>
  );
}
