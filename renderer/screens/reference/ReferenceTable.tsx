import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../parts/controls/ConfirmDialog.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { dateFormat } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import css from "./Reference.module.css";
import { Tests } from "./Tests.tsx";
import type { KeptBundle } from "./types.ts";
import { useWriteQuarters } from "./words.ts";

/** Lists every kept bundle: its origin, its content, and the button that removes it. */
export function ReferenceTable({ references }: { readonly references: readonly KeptBundle[] }) {
  const { t } = useTranslation("reference");
  const [removing, setRemoving] = useState<KeptBundle | null>(null);
  const columns = useColumns(setRemoving);
  return (
    <>
      <DataTable<KeptBundle>
        caption={t("list.title")}
        columns={columns}
        rows={references}
        rowKey={({ id }) => id}
        rowHeight={80}
        maxHeight="none"
      />
      {removing !== null && <RemoveDialog reference={removing} onClose={() => setRemoving(null)} />}
    </>
  );
}

function useColumns(remove: (reference: KeptBundle) => void): Column<KeptBundle>[] {
  const { t, i18n } = useTranslation("reference");
  const writeQuarters = useWriteQuarters();
  const format = dateFormat("dayHere", i18n.language);
  return [
    column("origin", t("list.origin"), "auto", ({ origin }) => <span className={css.whole}>{origin}</span>),
    numberColumn("marks", t("list.marks"), "5rem", ({ marks }) => writeNumber(marks, i18n.language)),
    column("tests", t("list.tests"), "32rem", ({ tests }) => <Tests tests={tests} />),
    column("when", t("list.when"), "11rem", ({ quarters, addedAt }) => (
      <>
        {writeQuarters(quarters)}
        <small className={`small quiet ${css.added}`}>
          {t("list.added", { date: format.format(new Date(addedAt)) })}
        </small>
      </>
    )),
    column("remove", <span className="unseen">{t("list.remove")}</span>, "8.5rem", (reference) => (
      <Button label={t("list.removeOf", { origin: reference.origin })} onPress={() => remove(reference)}>
        {t("list.remove")}
      </Button>
    )),
  ];
}

interface RemoveDialogProps {
  readonly reference: KeptBundle;
  readonly onClose: () => void;
}

/** Removes a bundle with all places among its marks, after a confirmation. */
function RemoveDialog({ reference: { id, origin, marks }, onClose }: RemoveDialogProps) {
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
