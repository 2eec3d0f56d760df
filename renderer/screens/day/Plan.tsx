import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { useDistance } from "../../parts/plan/useDistance.ts";
import { writeDate } from "../../words/dates.ts";
import { ChangePlanDialog } from "./ChangePlanDialog.tsx";
import css from "./Plan.module.css";

interface PlanProps {
  readonly day: { readonly id: number; readonly title: string; readonly date: string };
  /** ISO 8601. */
  readonly today: string;
  /** Number of athletes on its list. */
  readonly listed: number;
}

/** Shows the name and the date of a planned day; both can be changed, and the day deleted, until it opens. */
export function Plan({ day, today, listed }: PlanProps) {
  const { t, i18n } = useTranslation("planning");
  const [open, setOpen] = useState<"change" | "discard" | null>(null);
  const distance = useDistance(day.date, today);
  const close = () => setOpen(null);
  return (
    <section aria-label={t("plan.label")}>
      <Row gap={4} lines={2} align="center" wrap between>
        <p>
          <strong>{day.title}</strong>, {writeDate(day.date, i18n.language)}
        </p>
        <Row gap={3} lines={2} wrap>
          <Button onPress={() => setOpen("change")}>{t("plan.change")}</Button>
          <Button kind="danger" onPress={() => setOpen("discard")}>
            {t("plan.discard")}
          </Button>
        </Row>
      </Row>
      {distance !== null && <p className={`alert ${css.far}`}>{t("far.note", { distance })}</p>}
      {open === "change" && <ChangePlanDialog day={day} today={today} onClose={close} />}
      {open === "discard" && <DiscardDialog day={day} listed={listed} onClose={close} />}
    </section>
  );
}

interface DiscardDialogProps {
  readonly day: { readonly id: number; readonly title: string };
  readonly listed: number;
  readonly onClose: () => void;
}

/** Says what is deleted with a planned day, before it is. */
function DiscardDialog({ day, listed, onClose }: DiscardDialogProps) {
  const { t } = useTranslation("planning");
  const trpc = useTRPC();
  const discard = useMutation(
    trpc.day.discard.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "planning:discard.done" }, follows: "once" }),
      onSettled: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("discard.title")}
      cancel={t("discard.keep")}
      confirm={t("discard.yes")}
      busy={discard.isPending}
      onConfirm={() => discard.mutate({ dayId: day.id })}
      onClose={onClose}
    >
      <p>{t("discard.what", { title: day.title })}</p>
      <p>{t("discard.list", { count: listed })}</p>
    </ConfirmDialog>
  );
}
