import { type Ref, useId } from "react";
import { useTranslation } from "react-i18next";
import { Select } from "../../parts/controls/Select.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import css from "./Athletes.module.css";

const needs = ["all", "notDone", "guardian", "notAsked"] as const;
/** What those who are listed have in common. */
export type Need = (typeof needs)[number];

interface FilterProps {
  readonly query: string;
  readonly leagueId: number | null;
  readonly need: Need;
  readonly leagues: readonly { readonly id: number; readonly name: string }[];
  readonly inputRef: Ref<HTMLInputElement>;
  readonly onChange: (change: { query?: string; leagueId?: number | null; need?: Need }) => void;
  readonly onEnter: () => void;
}

/** Selects the athletes to list, by text and league. */
export function Filter({ query, leagueId, need, leagues, inputRef, onChange, onEnter }: FilterProps) {
  const { t } = useTranslation("athletes");
  const id = useId();
  return (
    <div className={css.filter}>
      <TextField
        label={t("search")}
        type="search"
        value={query}
        onChange={(typed) => onChange({ query: typed })}
        onEnter={onEnter}
        inputRef={inputRef}
        maxLength={200}
      />
      <Stack gap={1} className="strong">
        <label htmlFor={id}>{t("league")}</label>
        <select
          id={id}
          className={css.select}
          value={leagueId ?? ""}
          onChange={({ currentTarget: { value } }) =>
            onChange({ leagueId: value === "" ? null : Number(value) })
          }
        >
          <option value="">{t("allLeagues")}</option>
          {leagues.map((league) => (
            <option key={league.id} value={league.id}>
              {league.name}
            </option>
          ))}
        </select>
      </Stack>
      <Select
        label={t("need")}
        value={needs.indexOf(need)}
        onChange={(place) => onChange({ need: needs[place] ?? "all" })}
      >
        {needs.map((each, place) => (
          <option key={each} value={place}>
            {t(`needs.${each}`)}
          </option>
        ))}
      </Select>
    </div>
  );
}
