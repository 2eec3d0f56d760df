import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { useDistance } from "../../parts/plan/useDistance.ts";
import { writeDate } from "../../words/dates.ts";
import { ChangePlanDialog } from "./ChangePlanDialog.tsx";
import { Missing } from "./Missing.tsx";

interface DayStateProps {
  readonly day: {
    readonly id: number;
    readonly title: string;
    readonly date: string;
    readonly state: "planned" | "open" | "closed";
  };
  /** ISO 8601. */
  readonly today: string;
  /** True if anybody is on the list. */
  readonly listed: boolean;
}

/** Offers the next step of the whole day: opening or closing it. */
export function DayState({ day, today, listed }: DayStateProps) {
  if (day.state === "closed") return null;
  if (day.state === "open") return <CloseDay dayId={day.id} />;
  return <OpenDay day={day} today={today} listed={listed} />;
}

/** Closes the day, after saying what is missing. */
function CloseDay({ dayId }: { readonly dayId: number }) {
  const { t } = useTranslation("day");
  const [asking, setAsking] = useState(false);
  return (
    <>
      <Button onPress={() => setAsking(true)}>{t("close.action")}</Button>
      {asking && <CloseDialog dayId={dayId} onClose={() => setAsking(false)} />}
    </>
  );
}

function CloseDialog({ dayId, onClose }: { readonly dayId: number; readonly onClose: () => void }) {
  const { t } = useTranslation(["day", "planning"]);
  const trpc = useTRPC();
  const missing = useQuery(trpc.day.beforeClosing.queryOptions());
  const close = useMutation(
    trpc.day.close.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:close.done" }, follows: "once" }),
      onSettled: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("day:close.title")}
      cancel={t("day:close.keep")}
      confirm={t("day:close.action")}
      busy={close.isPending}
      onConfirm={() => close.mutate({ dayId })}
      onClose={onClose}
    >
      <Answer query={missing}>{(told) => <Missing told={told} onGo={onClose} />}</Answer>
      <p>{t("day:close.what")}</p>
      <p>{t("planning:closing.late")}</p>
    </ConfirmDialog>
  );
}

interface OpenDayProps {
  readonly day: { readonly id: number; readonly title: string; readonly date: string };
  /** ISO 8601. */
  readonly today: string;
  /** True if anybody is on the list: before that, the rosters are the next step, not opening. */
  readonly listed: boolean;
}

/** Opens the planned day; asks about a date that is not near today first. */
function OpenDay({ day, today, listed }: OpenDayProps) {
  const { t, i18n } = useTranslation(["day", "planning"]);
  const trpc = useTRPC();
  const [step, setStep] = useState<"ask" | "change" | null>(null);
  const distance = useDistance(day.date, today);
  const write = (date: string) => writeDate(date, i18n.language);
  const open = useMutation(
    trpc.day.open.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:open.done" } }),
      onSettled: () => setStep(null),
    }),
  );
  return (
    <>
      <Button
        kind={listed ? "primary" : "quiet"}
        busy={open.isPending}
        onPress={() => (distance === null ? open.mutate({}) : setStep("ask"))}
      >
        {t("day:open.action")}
      </Button>
      {step === "ask" && (
        <ConfirmDialog
          title={t("planning:open.title")}
          cancel={t("planning:open.change")}
          confirm={t("planning:open.yes")}
          kind="primary"
          busy={open.isPending}
          onConfirm={() => open.mutate({ sure: true })}
          onClose={() => setStep("change")}
        >
          <p>
            {t("planning:open.what", {
              date: write(day.date),
              today: write(today),
              distance: distance ?? "",
            })}
          </p>
          <p>{t("planning:open.clock")}</p>
        </ConfirmDialog>
      )}
      {step === "change" && (
        <ChangePlanDialog day={day} today={today} first="date" onClose={() => setStep(null)} />
      )}
    </>
  );
}
