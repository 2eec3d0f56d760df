import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { writeDate } from "../../app/dates.ts";
import { Select } from "../../parts/Select.tsx";

interface DayChoiceProps {
  readonly chosen: number;
  readonly onChoose: (dayId: number) => void;
}

/** Which day the bundle is of; nothing to choose while there is only one. */
export function DayChoice({ chosen, onChoose }: DayChoiceProps) {
  const { t, i18n } = useTranslation("bundle");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const days = [...(current.data?.day == null ? [] : [current.data.day]), ...(current.data?.earlier ?? [])];
  if (days.length < 2) return null;
  return (
    <Select label={t("choose.label")} value={chosen} onChange={onChoose}>
      {days.map((day) => (
        <option key={day.id} value={day.id}>
          {`${day.title}, ${writeDate(day.date, i18n.language)}`}
        </option>
      ))}
    </Select>
  );
}
