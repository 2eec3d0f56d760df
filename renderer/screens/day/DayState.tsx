import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { OpenDay } from "./OpenDay.tsx";

interface DayStateProps {
  readonly day: {
    readonly id: number;
    readonly title: string;
    readonly date: string;
    readonly state: "planned" | "open" | "closed";
  };
  /** ISO 8601. */
  readonly today: string;
  /** Whether anybody is on the list. */
  readonly listed: boolean;
}

/** The one step that comes next for the day as a whole: open it, or close it. */
export function DayState({ day, today, listed }: DayStateProps) {
  if (day.state === "closed") return null;
  if (day.state === "open") return <CloseDay dayId={day.id} />;
  return <OpenDay day={day} today={today} listed={listed} />;
}

function CloseDay({ dayId }: { readonly dayId: number }) {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const [asking, setAsking] = useState(false);
  const close = useMutation(
    trpc.day.close.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:close.done" } }),
      onSettled: () => setAsking(false),
    }),
  );
  return (
    <>
      <Button onPress={() => setAsking(true)}>{t("close.action")}</Button>
      {asking && (
        <ConfirmDialog
          title={t("close.title")}
          cancel={t("close.keep")}
          confirm={t("close.action")}
          busy={close.isPending}
          onConfirm={() => close.mutate({ dayId })}
          onClose={() => setAsking(false)}
        >
          <p>{t("close.what")}</p>
        </ConfirmDialog>
      )}
    </>
  );
}
