import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { dateFormat } from "../../words/dates.ts";
import { writeNumber } from "../../words/numbers.ts";
import css from "./Reference.module.css";
import { RemoveDialog } from "./RemoveDialog.tsx";
import { Tests } from "./Tests.tsx";
import type { KeptBundle } from "./types.ts";
import { useWriteQuarters } from "./words.ts";

/** Every bundle that is kept: where it is from, what it holds, and the way to take it away. */
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
    {
      key: "origin",
      head: t("list.origin"),
      cell: ({ origin }) => <span className={css.whole}>{origin}</span>,
    },
    {
      key: "marks",
      head: t("list.marks"),
      kind: "number",
      width: "5rem",
      cell: ({ marks }) => writeNumber(marks, i18n.language),
    },
    { key: "tests", head: t("list.tests"), width: "32rem", cell: ({ tests }) => <Tests tests={tests} /> },
    {
      key: "when",
      head: t("list.when"),
      width: "11rem",
      cell: ({ quarters, addedAt }) => (
        <>
          {writeQuarters(quarters)}
          <small className={css.added}>{t("list.added", { date: format.format(new Date(addedAt)) })}</small>
        </>
      ),
    },
    {
      key: "remove",
      head: <span className="unseen">{t("list.remove")}</span>,
      width: "8.5rem",
      cell: (reference) => (
        <Button label={t("list.removeOf", { origin: reference.origin })} onPress={() => remove(reference)}>
          {t("list.remove")}
        </Button>
      ),
    },
  ];
}
