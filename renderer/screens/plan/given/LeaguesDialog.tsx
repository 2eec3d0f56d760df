import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import type { Planned } from "../types.ts";
import { LeagueFields } from "./LeagueFields.tsx";
import { SettingsDialog } from "./SettingsDialog.tsx";
import { readLeague, type TypedLeague, typedLeague, unusual } from "./typed.ts";
import { useSavePlan } from "./useSavePlan.ts";

interface LeaguesDialogProps {
  readonly planned: Planned;
  readonly onClose: () => void;
}

/** Asks when each league comes, how many of it, and how likely they come; leagues can be added before their lists are there. */
export function LeaguesDialog({ planned, onClose }: LeaguesDialogProps) {
  const { t } = useTranslation("plan");
  const fresh: TypedLeague = {
    ...{ league: "", number: "", comes: "90", listed: null },
    ...{ from: planned.begins, until: planned.begins },
  };
  const [typed, setTyped] = useState<readonly TypedLeague[]>(() =>
    planned.leagues.length === 0 ? [fresh] : planned.leagues.map(typedLeague),
  );
  const [tried, setTried] = useState(false);
  const saving = useSavePlan(planned, onClose);
  // The cursor begins at the first league, and goes to one that is added.
  const [shownAtFirst] = useState(typed.length);

  function send(): void {
    setTried(true);
    // One that was added and left empty is no league.
    const meant = typed.filter(
      ({ league, number, listed }) => listed !== null || `${league}${number}`.trim() !== "",
    );
    const read = meant.map((each) => readLeague(each)).filter((each) => each !== null);
    if (read.length === meant.length) saving.save({ leagues: unusual(read, planned.begins) });
  }
  return (
    <SettingsDialog title={t("leagues.title")} saving={saving} onSave={send} onClose={onClose}>
      <p className="quiet">{t("leagues.lead")}</p>
      {typed.map((each, index) => (
        <LeagueFields
          // biome-ignore lint/suspicious/noArrayIndexKey: leagues keep their places while they are typed
          key={index}
          typed={each}
          tried={tried}
          autoFocus={index === 0 || index >= shownAtFirst}
          onChange={(changed) => setTyped(typed.with(index, changed))}
        />
      ))}
      <div>
        <Button onPress={() => setTyped([...typed, fresh])}>{t("leagues.add")}</Button>
      </div>
    </SettingsDialog>
  );
}
