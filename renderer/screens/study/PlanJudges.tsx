import { useTranslation } from "react-i18next";
import { Check } from "../../parts/controls/Check.tsx";
import { Select } from "../../parts/controls/Select.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { DaySelect } from "./DaySelect.tsx";
import { firstJudge, judgesOfDay, type PlanPartProps } from "./planned.ts";
import css from "./Study.module.css";

/** Asks whose readings of which attempts are compared. */
export function PlanJudges({ plan, days, change }: PlanPartProps) {
  const { t } = useTranslation("study");
  const isOfDay = plan.ofDay && plan.dayId !== 0;
  const entered = isOfDay ? judgesOfDay(plan, days) : [];
  function name(at: number, judge: string): void {
    change({ judges: plan.judges.map((each, index) => (index === at ? judge : each)) });
  }
  return (
    <Stack gap={4} align="start">
      <DaySelect
        label={t("plan.day")}
        none={t("plan.noDay")}
        days={days}
        value={plan.dayId}
        onChange={(dayId) => change({ dayId })}
      />
      {plan.dayId !== 0 && (
        <Check checked={plan.ofDay} onChange={(ofDay) => change({ ofDay })}>
          {t("plan.ofDay")}
        </Check>
      )}
      <div className={css.fields}>
        {plan.judges.map((judge, at) =>
          at === 0 && entered.length > 0 ? (
            <Select
              key="first"
              label={t("plan.first")}
              value={entered.findIndex((each) => each.judge === firstJudge(plan, days))}
              onChange={(chosen) => name(0, entered[chosen]?.judge ?? "")}
            >
              {entered.map((each, index) => (
                <option key={each.judge} value={index}>
                  {t("plan.entered", each)}
                </option>
              ))}
            </Select>
          ) : (
            <TextField
              // biome-ignore lint/suspicious/noArrayIndexKey: judges are numbered
              key={at}
              label={t("plan.judge", { count: at + 1 })}
              value={judge}
              onChange={(typed) => name(at, typed)}
              maxLength={4}
            />
          ),
        )}
      </div>
      <p className="small quiet">{t("plan.third")}</p>
    </Stack>
  );
}
