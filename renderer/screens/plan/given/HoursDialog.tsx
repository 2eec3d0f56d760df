import { useState } from "react";
import { useTranslation } from "react-i18next";
import { planMost } from "../../../../electron/domain/plan/settings.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { readClock } from "../clock.ts";
import css from "../Plan.module.css";
import type { Planned } from "../types.ts";
import { SettingsDialog } from "./SettingsDialog.tsx";
import { useSavePlan } from "./useSavePlan.ts";

interface HoursDialogProps {
  readonly planned: Planned;
  readonly onClose: () => void;
}

interface TypedBreak {
  readonly from: string;
  readonly until: string;
}

const noBreak: TypedBreak = { from: "", until: "" };

function isBlank({ from, until }: TypedBreak): boolean {
  return from.trim() === "" && until.trim() === "";
}

/** Reads the typed breaks without the blank ones; null where a time can't be read. */
function readBreaks(typed: readonly TypedBreak[]): TypedBreak[] | null {
  const read = typed
    .filter((each) => !isBlank(each))
    .map((each) => ({ from: readClock(each.from), until: readClock(each.until) }));
  const whole = read.filter((each): each is TypedBreak => each.from !== null && each.until !== null);
  return whole.length === read.length ? whole : null;
}

/** Asks when the day begins and when it pauses. */
export function HoursDialog({ planned, onClose }: HoursDialogProps) {
  const { t } = useTranslation("plan");
  const [typed, setTyped] = useState(planned.begins);
  const [breaks, setBreaks] = useState<readonly TypedBreak[]>(planned.breaks);
  const [tried, setTried] = useState(false);
  const saving = useSavePlan(planned, onClose);
  const begins = readClock(typed);

  function send(): void {
    setTried(true);
    const read = readBreaks(breaks);
    if (begins !== null && read !== null) saving.save({ begins, breaks: read });
  }
  return (
    <SettingsDialog title={t("hours.title")} saving={saving} onSave={send} onClose={onClose}>
      <TextField
        label={t("hours.begins")}
        help={t("hours.beginsHelp")}
        value={typed}
        onChange={setTyped}
        maxLength={6}
        autoFocus
        error={tried && begins === null ? t("given.notClock") : null}
      />
      {breaks.map((each, index) => (
        <BreakFields
          // biome-ignore lint/suspicious/noArrayIndexKey: breaks have no names, and never change places
          key={index}
          number={index + 1}
          isNew={index >= planned.breaks.length}
          typed={each}
          tried={tried}
          onChange={(changed) => setBreaks(breaks.with(index, changed))}
        />
      ))}
      <p className="small quiet measure">{t("hours.breaksHelp")}</p>
      {breaks.length < planMost.breaks && (
        <div>
          <Button onPress={() => setBreaks([...breaks, noBreak])}>{t("hours.addBreak")}</Button>
        </div>
      )}
    </SettingsDialog>
  );
}

interface BreakFieldsProps {
  readonly number: number;
  /** True for one that was added here: the cursor goes to it. */
  readonly isNew: boolean;
  readonly typed: TypedBreak;
  readonly tried: boolean;
  readonly onChange: (typed: TypedBreak) => void;
}

function BreakFields({ number, isNew, typed, tried, onChange }: BreakFieldsProps) {
  const { t } = useTranslation("plan");
  const field = (name: keyof TypedBreak) => (
    <TextField
      autoFocus={isNew && name === "from"}
      label={t(`given.${name}`)}
      value={typed[name]}
      onChange={(changed) => onChange({ ...typed, [name]: changed })}
      maxLength={6}
      error={tried && !isBlank(typed) && readClock(typed[name]) === null ? t("given.notClock") : null}
    />
  );
  return (
    <fieldset>
      <legend className="strong">{t("hours.break", { number })}</legend>
      <div className={css.fields}>
        {field("from")}
        {field("until")}
      </div>
    </fieldset>
  );
}
