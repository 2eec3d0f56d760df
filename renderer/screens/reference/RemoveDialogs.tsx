import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tellDone } from "../../app/messages.ts";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { writeNumber } from "../../words/numbers.ts";
import { Key } from "./Key.tsx";
import type { KeptBundle, KeptTable, Publisher } from "./types.ts";

interface Closing {
  readonly onClose: () => void;
}

/** Removes a bundle with all places among its marks, after a confirmation. */
export function RemoveBundle({ reference, onClose }: Closing & { readonly reference: KeptBundle }) {
  const { t, i18n } = useTranslation("reference");
  const trpc = useTRPC();
  const { id, origin, marks } = reference;
  const remove = useMutation(
    trpc.reference.remove.mutationOptions({
      onSuccess: tellDone({ key: "reference:remove.done", values: { origin } }, onClose),
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

/** Removes a table with all places among its marks, after a confirmation. */
export function RemoveTable({ table, onClose }: Closing & { readonly table: KeptTable }) {
  const { t, i18n } = useTranslation("reference");
  const trpc = useTRPC();
  const { id, publisher, marks } = table;
  const remove = useMutation(
    trpc.reference.removeTable.mutationOptions({
      onSuccess: tellDone({ key: "reference:table.remove.done", values: { publisher } }, onClose),
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("table.remove.title", { publisher })}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ id })}
      onClose={onClose}
    >
      <p>{t("table.remove.what", { count: marks, shown: writeNumber(marks, i18n.language) })}</p>
    </ConfirmDialog>
  );
}

/** Forgets a publisher's key, with their table, after a confirmation that Enter alone does not give. */
export function ForgetPublisher({ of, onClose }: Closing & { readonly of: Publisher }) {
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const { id, publisher, key, hasTable } = of;
  const forget = useMutation(
    trpc.reference.forgetPublisher.mutationOptions({
      onSuccess: tellDone({ key: "reference:keys.forget.done", values: { publisher } }, onClose),
      onError: onClose,
    }),
  );
  return (
    <ConfirmDialog
      title={t("keys.forget.title", { publisher })}
      cancel={t("keys.forget.cancel")}
      confirm={t("keys.forget.sure")}
      busy={forget.isPending}
      onConfirm={() => forget.mutate({ id })}
      onClose={onClose}
    >
      <Key digits={key} />
      <p>{t("keys.forget.when")}</p>
      <p>{t(hasTable ? "keys.forget.withTable" : "keys.forget.without")}</p>
    </ConfirmDialog>
  );
}
