import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";

interface DayStateProps {
  readonly day: { readonly id: number; readonly state: "planned" | "open" | "closed" };
  /** Whether anybody is on the list: before that, the rosters are the next step and opening is not. */
  readonly listed: boolean;
}

/** The one step that comes next for the day as a whole: open it, or close it. */
export function DayState({ day, listed }: DayStateProps) {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const open = useMutation(
    trpc.day.open.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:open.done" } }),
    }),
  );
  if (day.state === "closed") return null;
  if (day.state === "open") return <CloseDay dayId={day.id} />;
  return (
    <Button kind={listed ? "primary" : "quiet"} busy={open.isPending} onPress={() => open.mutate()}>
      {t("open.action")}
    </Button>
  );
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
