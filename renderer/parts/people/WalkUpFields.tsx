import { useTranslation } from "react-i18next";
import { fold } from "../../../electron/domain/people/fold.ts";
import { Choice } from "../controls/Choice.tsx";
import { NumberField } from "../controls/NumberField.tsx";
import { TextField } from "../controls/TextField.tsx";
import { LeagueField } from "./LeagueField.tsx";
import css from "./WalkUpFields.module.css";

/** A walk-up's identity, as typed. */
export interface TypedWalkUp {
  readonly name: string;
  readonly number: string;
  readonly league: string;
  readonly birthYear: string;
  readonly category: "women" | "men" | "open" | null;
}

/** `halfLeague`: what was typed of the league is only a part of one that is known. */
export type WalkUpFault = "name" | "number" | "league" | "halfLeague" | "birthYear";

/** Returns blank fields, prefilled with the text typed into the search. */
export function emptyWalkUp(typed: string): TypedWalkUp {
  const digits = /^\d{1,4}$/.test(typed.trim());
  return {
    name: digits ? "" : typed.trim(),
    number: digits ? typed.trim() : "",
    league: "",
    birthYear: "",
    category: null,
  };
}

export function faultsOf(who: TypedWalkUp): ReadonlySet<WalkUpFault> {
  const faults = new Set<WalkUpFault>();
  if (fold(who.name) === "") faults.add("name");
  if (!/^\d{0,4}$/.test(who.number.trim())) faults.add("number");
  if (fold(who.league) === "") faults.add("league");
  if (!/^(\d{4})?$/.test(who.birthYear.trim())) faults.add("birthYear");
  return faults;
}

interface WalkUpFieldsProps {
  readonly who: TypedWalkUp;
  readonly onChange: (who: TypedWalkUp) => void;
  readonly faults: ReadonlySet<WalkUpFault>;
  /** Why the number was refused: somebody else of that league has it. */
  readonly numberRefusal?: string | null;
}

export function WalkUpFields({ who, onChange, faults, numberRefusal = null }: WalkUpFieldsProps) {
  const { t } = useTranslation("checkIn");
  const set = (change: Partial<TypedWalkUp>) => onChange({ ...who, ...change });
  return (
    <>
      <div className={css.fields}>
        <div className={css.name}>
          <TextField
            label={t("walkUpForm.name")}
            value={who.name}
            onChange={(name) => set({ name })}
            error={faults.has("name") ? t("walkUpForm.nameMissing") : null}
            maxLength={200}
            autoFocus
          />
        </div>
        <NumberField
          label={t("walkUpForm.number")}
          value={who.number}
          onChange={(number) => set({ number })}
          error={faults.has("number") ? t("walkUpForm.badNumber") : numberRefusal}
          maxLength={20}
        />
        <div className={css.league}>
          <LeagueField value={who.league} onChange={(league) => set({ league })} error={leagueError()} />
        </div>
        <NumberField
          label={t("walkUpForm.birthYear")}
          value={who.birthYear}
          onChange={(birthYear) => set({ birthYear: birthYear.trim() })}
          error={faults.has("birthYear") ? t("walkUpForm.badYear") : null}
          maxLength={4}
        />
      </div>
      <div className={css.category}>
        <Choice
          label={t("walkUpForm.category")}
          options={(["women", "men", "open"] as const).map((value) => ({
            value,
            label: t(`walkUpForm.${value}`),
          }))}
          value={who.category}
          onChange={(category) => set({ category })}
        />
      </div>
    </>
  );

  function leagueError(): string | null {
    if (faults.has("league")) return t("walkUpForm.leagueMissing");
    return faults.has("halfLeague") ? t("walkUpForm.leagueHalf", { league: who.league.trim() }) : null;
  }
}
