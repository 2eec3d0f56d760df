import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";

interface DiscardDialogProps {
  readonly day: { readonly id: number; readonly title: string };
  readonly listed: number;
  readonly onClose: () => void;
}

/** Says what is deleted with a planned day, before it is. */
export function DiscardDialog({ day, listed, onClose }: DiscardDialogProps) {
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
