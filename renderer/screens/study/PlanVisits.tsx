import { useTranslation } from "react-i18next";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { DaySelect } from "./DaySelect.tsx";
import { aWeekAfter, type PlanPartProps, secondDays } from "./planned.ts";

/** Asks which two visits are compared: days of the program, or dates whose results are brought. */
export function PlanVisits({ plan, days, change }: PlanPartProps) {
  const { t } = useTranslation("study");
  const [first, second] = plan.dates;
  const later = secondDays(days, plan);
  function chooseFirst(dayId: number): void {
    const date = days.find(({ id }) => id === dayId)?.date ?? first;
    change({ dayId, secondDayId: 0, dates: [first, aWeekAfter(date)] });
  }
  return (
    <>
      <Row gap={5} lines={3} wrap align="end">
        <DaySelect
          label={t("plan.firstVisit")}
          none={t("plan.otherDate")}
          days={days}
          value={plan.dayId}
          onChange={chooseFirst}
        />
        {plan.dayId === 0 && (
          <TextField
            label={t("plan.firstDate")}
            type="date"
            value={first}
            onChange={(date) => change({ dates: [date, second] })}
          />
        )}
      </Row>
      <Row gap={5} lines={3} wrap align="end">
        <DaySelect
          label={t("plan.secondVisit")}
          none={t("plan.otherDate")}
          days={later}
          value={plan.secondDayId}
          onChange={(secondDayId) => change({ secondDayId })}
        />
        {plan.secondDayId === 0 && (
          <TextField
            label={t("plan.secondDate")}
            type="date"
            value={second}
            onChange={(date) => change({ dates: [first, date] })}
          />
        )}
      </Row>
    </>
  );
}
