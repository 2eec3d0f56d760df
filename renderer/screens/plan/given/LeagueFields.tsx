import { useTranslation } from "react-i18next";
import { planMost } from "../../../../electron/domain/plan/settings.ts";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { readClock } from "../clock.ts";
import css from "../Plan.module.css";
import { arrivingFrom, readCount, type TypedLeague } from "./typed.ts";

interface LeagueFieldsProps {
  readonly typed: TypedLeague;
  readonly tried: boolean;
  readonly autoFocus: boolean;
  readonly onChange: (typed: TypedLeague) => void;
}

/** The fields of one league under its name, or with its name where it was added here. */
export function LeagueFields({ typed, tried, autoFocus, onChange }: LeagueFieldsProps) {
  const { t } = useTranslation("plan");
  const { league, listed } = typed;
  const change = (name: keyof TypedLeague) => (changed: string) => onChange({ ...typed, [name]: changed });
  const isMeant = listed !== null || `${league}${typed.number}`.trim() !== "";
  const wrong = (isWrong: boolean, says: string) => (tried && isMeant && isWrong ? says : null);
  const isNumber =
    typed.number.trim() === "" ? listed !== null : readCount(typed.number, 0, planMost.ofLeague) !== null;
  return (
    <Stack as="fieldset" gap={2}>
      <legend className="strong">
        {listed === null ? t("leagues.new") : t("leagues.listed", { league, count: listed })}
      </legend>
      {listed === null && (
        <TextField
          label={t("leagues.name")}
          value={league}
          onChange={change("league")}
          maxLength={80}
          autoFocus={autoFocus}
          error={wrong(league.trim() === "", t("leagues.noName"))}
        />
      )}
      <div className={css.fields}>
        <NumberField
          label={t("leagues.number")}
          value={typed.number}
          onChange={change("number")}
          maxLength={3}
          autoFocus={autoFocus && listed !== null}
          error={wrong(!isNumber, t("given.notCount", { least: 0, most: planMost.ofLeague }))}
        />
        <TextField
          label={t("leagues.from")}
          value={typed.from}
          onChange={(from) => onChange(arrivingFrom(typed, from))}
          maxLength={6}
          error={wrong(readClock(typed.from) === null, t("given.notClock"))}
        />
        <TextField
          label={t("leagues.until")}
          value={typed.until}
          onChange={change("until")}
          maxLength={6}
          error={wrong(readClock(typed.until) === null, t("given.notClock"))}
        />
        <NumberField
          label={t("leagues.comes")}
          value={typed.comes}
          onChange={change("comes")}
          maxLength={3}
          unit="%"
          error={wrong(readCount(typed.comes, 0, 100) === null, t("given.notCount", { least: 0, most: 100 }))}
        />
      </div>
    </Stack>
  );
}
