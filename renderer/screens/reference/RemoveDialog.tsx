import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { writeNumber } from "../../words/numbers.ts";
import type { KeptBundle } from "./types.ts";

interface RemoveDialogProps {
  readonly reference: KeptBundle;
  readonly onClose: () => void;
}

/** Takes a bundle away with every place among its marks. */
export function RemoveDialog({ reference: { id, origin, marks }, onClose }: RemoveDialogProps) {
  const { t, i18n } = useTranslation("reference");
  const trpc = useTRPC();
  const remove = useMutation(
    trpc.reference.remove.mutationOptions({
      onSuccess() {
        tell({ tone: "done", sentence: { key: "reference:remove.done", values: { origin } } });
        onClose();
      },
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("remove.title", { origin })}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ id })}
      onClose={onClose}
    >
      <p>{t("remove.what", { count: marks, shown: writeNumber(marks, i18n.language) })}</p>
    </ConfirmDialog>
  );
}
