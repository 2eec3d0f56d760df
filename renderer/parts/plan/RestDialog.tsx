import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { leastRestMinutes, mostRestMinutes } from "../../../electron/domain/queue/rest.ts";
import { useTRPC } from "../../app/client.tsx";
import { tellDone } from "../../app/messages.ts";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";
import { NumberField } from "../controls/NumberField.tsx";

interface RestDialogProps {
  readonly minutes: number;
  readonly onClose: () => void;
}

/** Changes the minutes of rest between two tests; the queues follow at once. */
export function RestDialog({ minutes, onClose }: RestDialogProps) {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const [typed, setTyped] = useState(String(minutes));
  const [tried, setTried] = useState(false);
  const keep = useMutation(
    trpc.day.setRest.mutationOptions({
      onSuccess: tellDone({ key: "day:rules.restKept" }, onClose),
    }),
  );
  const isGood =
    /^\d{1,2}$/.test(typed.trim()) && Number(typed) >= leastRestMinutes && Number(typed) <= mostRestMinutes;

  function send(): void {
    setTried(true);
    if (isGood) keep.mutate({ restMinutes: Number(typed) });
  }
  return (
    <ConfirmDialog
      title={t("rules.rest.title")}
      cancel={t("rules.cancel")}
      confirm={t("rules.keep")}
      kind="primary"
      busy={keep.isPending}
      onConfirm={send}
      onClose={onClose}
    >
      <NumberField
        label={t("rules.rest.label")}
        value={typed}
        onChange={setTyped}
        onEnter={send}
        autoFocus
        maxLength={2}
        error={
          tried && !isGood ? t("rules.rest.bad", { least: leastRestMinutes, most: mostRestMinutes }) : null
        }
      />
    </ConfirmDialog>
  );
}
