import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { fewestSeries, studyKinds } from "../../../electron/domain/study/shape.ts";
import { protocolOf, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { NumberField } from "../../parts/controls/NumberField.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { dateHere } from "../../words/dates.ts";
import { useVariantName } from "../../words/marks.ts";
import { PlanJudges } from "./PlanJudges.tsx";
import { PlanVisits } from "./PlanVisits.tsx";
import { firstPlan, type PlanPartProps, seriesOf, type TypedPlan } from "./planned.ts";
import css from "./Study.module.css";
import type { StudyList } from "./types.ts";

/** Plans a study: what is repeated, of which test, by whom, and how many athletes it wants. */
export function PlanForm({ days, enough }: Pick<StudyList, "days" | "enough">) {
  const { t } = useTranslation("study");
  const [plan, setPlan] = useState(() => firstPlan(days, dateHere()));
  const change = (more: Partial<TypedPlan>) => setPlan((before) => ({ ...before, ...more }));
  const { send, busy } = useSendPlan(days);
  const isWhole = /^\d{1,4}$/.test(plan.aim.trim());
  const needed = enough.find(
    (each) => each.series === Math.max(fewestSeries, seriesOf(plan, days).length),
  )?.athletes;
  return (
    <Stack
      as="form"
      gap={5}
      align="start"
      onSubmit={(event) => {
        event.preventDefault();
        if (isWhole) void send(plan);
      }}
    >
      <Choice
        label={t("plan.kind")}
        options={studyKinds.map((kind) => ({ value: kind, label: t(`kind.${kind}`) }))}
        value={plan.kind}
        onChange={(kind) => change({ kind })}
      />
      <WhichTest plan={plan} change={change} />
      {plan.kind === "judges" ? (
        <PlanJudges plan={plan} days={days} change={change} />
      ) : (
        <PlanVisits plan={plan} days={days} change={change} />
      )}
      <div className={css.short}>
        <NumberField
          label={t("plan.aim")}
          {...(needed !== undefined && { help: t("plan.aimHelp", { count: needed }) })}
          value={plan.aim}
          onChange={(aim) => change({ aim })}
          error={isWhole ? null : t("plan.aimWhole")}
          maxLength={4}
        />
      </div>
      <Button kind="primary" type="submit" busy={busy}>
        {t("plan.do")}
      </Button>
    </Stack>
  );
}

function WhichTest({ plan, change }: Omit<PlanPartProps, "days">) {
  const { t } = useTranslation("study");
  const variantName = useVariantName();
  const { variants } = protocolOf(plan.test);
  const choose = (test: TestCode) => change({ test, variant: protocolOf(test).variants[0] ?? "" });
  return (
    <>
      <Choice
        label={t("plan.test")}
        options={testCodes.map((test) => ({
          value: test,
          label: <TestMark test={test} size="small" name="ability" />,
        }))}
        value={plan.test}
        onChange={choose}
      />
      {variants.length > 1 && (
        <Choice
          label={t("plan.variant")}
          options={variants.map((variant) => ({ value: variant, label: variantName(variant) }))}
          value={plan.variant}
          onChange={(variant) => change({ variant })}
        />
      )}
    </>
  );
}

/** Sends the plan and goes to the study; one id for all tries, so that a retry plans nothing twice. */
function useSendPlan(days: StudyList["days"]) {
  const trpc = useTRPC();
  const [, go] = useLocation();
  const { ask } = useInitials();
  const [id] = useState(() => crypto.randomUUID());
  const planning = useMutation(
    trpc.study.plan.mutationOptions({ onSuccess: (planned) => go(`/study/${planned.id}`) }),
  );
  async function send(plan: TypedPlan): Promise<void> {
    const by = await ask();
    if (by === null) return;
    const { kind, test, variant, dayId, aim } = plan;
    const [day, series] = [dayId === 0 ? null : dayId, seriesOf(plan, days)];
    planning.mutate({ id, kind, test, variant, dayId: day, series, aim: Number(aim), by });
  }
  return { send, busy: planning.isPending };
}
