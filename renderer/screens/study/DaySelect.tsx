import { useTranslation } from "react-i18next";
import { Select } from "../../parts/controls/Select.tsx";
import { useWriteDay } from "../../words/dates.ts";
import type { DayWithMarks } from "./types.ts";

interface DaySelectProps {
  readonly label: string;
  /** What stands for none of the days. */
  readonly none: string;
  readonly days: readonly DayWithMarks[];
  /** 0 for none. */
  readonly value: number;
  readonly onChange: (dayId: number) => void;
}

/** Selects a day, or none. */
export function DaySelect({ label, none, days, value, onChange }: DaySelectProps) {
  const { t } = useTranslation("summary");
  const writeDay = useWriteDay();
  return (
    <Select label={label} value={value} onChange={onChange}>
      {days.map(({ id, title, date }) => (
        <option key={id} value={id}>
          {t("ofDay", { title, date: writeDay(date) })}
        </option>
      ))}
      <option value={0}>{none}</option>
    </Select>
  );
}
