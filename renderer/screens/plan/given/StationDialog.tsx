import { useState } from "react";
import { useTranslation } from "react-i18next";
import { planMost } from "../../../../electron/domain/plan/settings.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import css from "../Plan.module.css";
import type { Planned, PlannedStation } from "../types.ts";
import { SettingsDialog } from "./SettingsDialog.tsx";
import { readCount, readTime, type TypedStation, typedStation } from "./typed.ts";
import { useSavePlan } from "./useSavePlan.ts";
import { useTimeSource } from "./useTimeSource.ts";

interface StationDialogProps {
  readonly planned: Planned;
  readonly station: PlannedStation;
  readonly onClose: () => void;
}

/** Asks how many places and lanes a station has, and how long a turn and the change-over take there. */
export function StationDialog({ planned, station, onClose }: StationDialogProps) {
  const { t } = useTranslation("plan");
  const testWord = useTestWords();
  const timeSource = useTimeSource();
  const [typed, setTyped] = useState<TypedStation>(() => typedStation(station));
  const [tried, setTried] = useState(false);
  const saving = useSavePlan(planned, onClose);
  const change = (name: keyof TypedStation) => (changed: string) => setTyped({ ...typed, [name]: changed });
  const places = readCount(typed.places, 1, planMost.places);
  const lanes = readCount(typed.lanes, 1, planMost.lanes);
  const turnSeconds = readTime(typed.turn, station.turn);
  const changeOverSeconds = readTime(typed.changeOver, station.changeOver);
  const notCount = (most: number) => t("given.notCount", { least: 1, most });

  function send(): void {
    setTried(true);
    if (places === null || lanes === null || turnSeconds === undefined || changeOverSeconds === undefined)
      return;
    const said = { test: station.test, places, lanes, turnSeconds, changeOverSeconds };
    saving.save({ stations: planned.stations.map((each) => (each.test === station.test ? said : each)) });
  }
  return (
    <SettingsDialog title={testWord(station.test, "name")} saving={saving} onSave={send} onClose={onClose}>
      <div className={css.fields}>
        <NumberField
          label={t("station.places")}
          help={t("station.placesHelp")}
          value={typed.places}
          onChange={change("places")}
          maxLength={2}
          autoFocus
          error={tried && places === null ? notCount(planMost.places) : null}
        />
        <NumberField
          label={t("station.lanes")}
          help={t("station.lanesHelp")}
          value={typed.lanes}
          onChange={change("lanes")}
          maxLength={2}
          error={tried && lanes === null ? notCount(planMost.lanes) : null}
        />
      </div>
      <div className={css.fields}>
        <NumberField
          label={t("station.turn")}
          help={timeSource(station.turn)}
          digits="time"
          value={typed.turn}
          onChange={change("turn")}
          maxLength={7}
          error={tried && turnSeconds === undefined ? t("station.notTime") : null}
        />
        <NumberField
          label={t("station.changeOver")}
          help={timeSource(station.changeOver)}
          digits="time"
          value={typed.changeOver}
          onChange={change("changeOver")}
          maxLength={7}
          error={tried && changeOverSeconds === undefined ? t("station.notTime") : null}
        />
      </div>
    </SettingsDialog>
  );
}
