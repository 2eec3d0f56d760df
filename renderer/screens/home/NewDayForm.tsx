import { useMutation } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { FarDateDialog } from "../../parts/plan/FarDateDialog.tsx";
import { isPlan, PlanFields, type TypedPlan } from "../../parts/plan/PlanFields.tsx";
import { useDistance } from "../../parts/plan/useDistance.ts";
import css from "./HomeScreen.module.css";

/** Holds the form that starts a day. */
export function NewDayPanel({ today }: { readonly today: string }) {
  const { t } = useTranslation("home");
  return (
    <Panel paper title={t("own.title")}>
      <NewDayForm today={today} />
    </Panel>
  );
}

/** Asks for a name and a date, all that a day needs at first; `today` is the desk's own date. */
function NewDayForm({ today }: { readonly today: string }) {
  const { t } = useTranslation("home");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const [title, setTitle] = useState("");
  // Null until somebody chooses one: a page that is left open goes on with the calendar.
  const [chosenDate, setChosenDate] = useState<string | null>(null);
  const plan: TypedPlan = { title, date: chosenDate ?? today };
  const [tried, setTried] = useState(false);
  const [asking, setAsking] = useState(false);
  const date = useRef<HTMLInputElement>(null);
  const far = useDistance(plan.date, today) !== null;
  const create = useMutation(
    trpc.day.create.mutationOptions({
      async onSuccess() {
        await queryClient.invalidateQueries(trpc.day.current.queryFilter());
        go("/day");
      },
      onError: () => setAsking(false),
    }),
  );

  function change(typed: TypedPlan): void {
    setTitle(typed.title);
    if (typed.date !== plan.date) setChosenDate(typed.date);
  }
  function submit(sure: boolean): void {
    setTried(true);
    if (!isPlan(plan)) return;
    if (far && !sure) setAsking(true);
    else create.mutate({ title: plan.title.trim(), date: plan.date, sure });
  }
  return (
    <Form gap={4} align="start" onSubmit={() => submit(false)}>
      <div className={css.fields}>
        <PlanFields plan={plan} onChange={change} tried={tried} nameHelp={t("own.nameHelp")} dateRef={date} />
      </div>
      <Button kind="primary" size="large" type="submit" busy={create.isPending}>
        {t("own.start")}
      </Button>
      {asking && (
        <FarDateDialog
          date={plan.date}
          today={today}
          busy={create.isPending}
          onYes={() => submit(true)}
          onNo={() => {
            setAsking(false);
            setTimeout(() => date.current?.focus());
          }}
        />
      )}
    </Form>
  );
}
