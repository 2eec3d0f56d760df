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
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const { id, origin, marks } = reference;
  const remove = useMutation(
    trpc.reference.remove.mutationOptions({
      onSuccess: tellDone({ key: "reference:remove.done", values: { origin } }, onClose),
      onError: onClose,
    }),
  );
  return (
    <ConfirmRemoval title={t("remove.title", { origin })} {...{ remove, id, onClose }}>
      {t("remove.what", useCounted(marks))}
    </ConfirmRemoval>
  );
}

/** Removes a table with all places among its marks, after a confirmation. */
export function RemoveTable({ table, onClose }: Closing & { readonly table: KeptTable }) {
  const { t } = useTranslation("reference");
  const trpc = useTRPC();
  const { id, publisher, marks } = table;
  const remove = useMutation(
    trpc.reference.removeTable.mutationOptions({
      onSuccess: tellDone({ key: "reference:table.remove.done", values: { publisher } }, onClose),
      onError: onClose,
    }),
  );
  return (
    <ConfirmRemoval title={t("table.remove.title", { publisher })} {...{ remove, id, onClose }}>
      {t("table.remove.what", useCounted(marks))}
    </ConfirmRemoval>
  );
}

/** Returns a number for a sentence: to count by, and as it is written. */
function useCounted(count: number) {
  const { i18n } = useTranslation();
  return { count, shown: writeNumber(count, i18n.language) };
}

interface RemovalProps extends Closing {
  readonly title: string;
  readonly id: number;
  readonly remove: { readonly isPending: boolean; readonly mutate: (what: { id: number }) => void };
  /** What is removed with it. */
  readonly children: string;
}

function ConfirmRemoval({ title, id, remove, onClose, children }: RemovalProps) {
  const { t } = useTranslation("reference");
  return (
    <ConfirmDialog
      title={title}
      cancel={t("remove.cancel")}
      confirm={t("remove.sure")}
      autoFocus
      busy={remove.isPending}
      onConfirm={() => remove.mutate({ id })}
      onClose={onClose}
    >
      <p>{children}</p>
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
