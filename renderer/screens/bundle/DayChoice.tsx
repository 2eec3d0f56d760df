import { useQuery } from "@tanstack/react-query";
import { useId } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { writeDate } from "../../app/dates.ts";
import css from "./DayChoice.module.css";

interface DayChoiceProps {
  readonly chosen: number;
  readonly onChoose: (dayId: number) => void;
}

/** Which day the bundle is of; nothing to choose while there is only one. */
export function DayChoice({ chosen, onChoose }: DayChoiceProps) {
  const { t, i18n } = useTranslation("bundle");
  const id = useId();
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const days = [...(current.data?.day == null ? [] : [current.data.day]), ...(current.data?.earlier ?? [])];
  if (days.length < 2) return null;
  return (
    <div className={css.choice}>
      <label htmlFor={id}>{t("choose.label")}</label>
      <select
        id={id}
        className={css.select}
        value={chosen}
        onChange={(event) => onChoose(Number(event.target.value))}
      >
        {days.map((day) => (
          <option key={day.id} value={day.id}>
            {`${day.title}, ${writeDate(day.date, i18n.language)}`}
          </option>
        ))}
      </select>
    </div>
  );
}
