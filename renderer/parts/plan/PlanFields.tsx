import type { Ref } from "react";
import { useTranslation } from "react-i18next";
import { writeDate } from "../../words/dates.ts";
import { TextField } from "../controls/TextField.tsx";

/** The typed name and date of a day. */
export interface TypedPlan {
  readonly title: string;
  /** ISO 8601, or empty. */
  readonly date: string;
}

interface PlanFieldsProps {
  readonly plan: TypedPlan;
  readonly onChange: (plan: TypedPlan) => void;
  /** True once somebody tried to go on, so that the missing parts are shown. */
  readonly tried: boolean;
  readonly nameHelp?: string;
  readonly dateRef?: Ref<HTMLInputElement>;
  readonly autoFocus?: "name" | "date";
}

/** Returns true if both are given. */
export function isPlan({ title, date }: TypedPlan): boolean {
  return title.trim() !== "" && date !== "";
}

/** The name of a day and its date, which is written out in words below. */
export function PlanFields({ plan, onChange, tried, nameHelp, dateRef, autoFocus }: PlanFieldsProps) {
  const { t, i18n } = useTranslation("home");
  const { title, date } = plan;
  return (
    <>
      <TextField
        label={t("own.name")}
        {...(nameHelp !== undefined && { help: nameHelp })}
        value={title}
        onChange={(typed) => onChange({ date, title: typed })}
        error={tried && title.trim() === "" ? t("own.nameEmpty") : null}
        maxLength={80}
        autoFocus={autoFocus === "name"}
      />
      <TextField
        label={t("own.date")}
        type="date"
        value={date}
        onChange={(typed) => onChange({ title, date: typed })}
        help={writeDate(date, i18n.language)}
        error={tried && date === "" ? t("own.dateEmpty") : null}
        {...(dateRef !== undefined && { inputRef: dateRef })}
        autoFocus={autoFocus === "date"}
      />
    </>
  );
}
