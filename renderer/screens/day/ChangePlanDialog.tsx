import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tellDone } from "../../app/messages.ts";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { FarDateDialog } from "../../parts/plan/FarDateDialog.tsx";
import { isPlan, PlanFields, type TypedPlan } from "../../parts/plan/PlanFields.tsx";
import { useDistance } from "../../parts/plan/useDistance.ts";

interface ChangePlanDialogProps {
  readonly day: { readonly id: number } & TypedPlan;
  /** ISO 8601. */
  readonly today: string;
  /** The field that is focused, which is the one most likely to be changed. */
  readonly first?: "name" | "date";
  readonly onClose: () => void;
}

/** Changes the name and the date of a planned day; asks about a new date that is not near today. */
export function ChangePlanDialog({ day, today, first = "name", onClose }: ChangePlanDialogProps) {
  const { t } = useTranslation("planning");
  const trpc = useTRPC();
  const [plan, setPlan] = useState<TypedPlan>({ title: day.title, date: day.date });
  const [tried, setTried] = useState(false);
  const [asking, setAsking] = useState(false);
  const far = useDistance(plan.date, today) !== null;
  const keep = useMutation(
    trpc.day.changePlan.mutationOptions({
      onSuccess: tellDone({ key: "planning:changing.kept" }, onClose),
    }),
  );

  function save(sure: boolean): void {
    setTried(true);
    if (!isPlan(plan)) return;
    if (far && plan.date !== day.date && !sure) setAsking(true);
    else keep.mutate({ dayId: day.id, title: plan.title.trim(), date: plan.date, sure });
  }
  if (asking) {
    return (
      <FarDateDialog
        date={plan.date}
        today={today}
        busy={keep.isPending}
        onYes={() => save(true)}
        onNo={() => setAsking(false)}
      />
    );
  }
  return (
    <ConfirmDialog
      title={t("changing.title")}
      cancel={t("changing.cancel")}
      confirm={t("changing.keep")}
      kind="primary"
      busy={keep.isPending}
      onConfirm={() => save(false)}
      onClose={onClose}
    >
      <Form gap={4} onSubmit={() => save(false)}>
        <PlanFields plan={plan} onChange={setPlan} tried={tried} autoFocus={first} />
        <button type="submit" hidden />
      </Form>
    </ConfirmDialog>
  );
}
