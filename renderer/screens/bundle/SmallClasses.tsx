import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/DataTable.tsx";
import { TestMark } from "../../parts/TestMark.tsx";
import type { Preview } from "./preview.ts";
import css from "./WhatLeaves.module.css";
import { useCategory, useVariant } from "./words.ts";

type SmallClass = Preview["smallClasses"][number];

/** Which groups are too small. For this screen alone: the file only says how many rows, and that coarsely. */
export function SmallClasses({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const variantOf = useVariant();
  const categoryOf = useCategory();
  const columns: Column<SmallClass>[] = [
    {
      key: "test",
      head: t("stays.class.test"),
      cell: ({ test, variant }) => (
        <span className={css.test}>
          <TestMark test={test} size="small" name="ability" />
          {variant !== "" && <span className={css.quiet}>{variantOf(variant)}</span>}
        </span>
      ),
    },
    {
      key: "ageBand",
      head: t("stays.class.ageBand"),
      cell: ({ ageBand }) => (ageBand === "unknown" ? t("stays.ageUnknown") : ageBand),
    },
    { key: "category", head: t("stays.class.category"), cell: ({ category }) => categoryOf(category) },
    {
      key: "athletes",
      head: t("stays.class.athletes"),
      kind: "number",
      cell: ({ athletes }) => athletes,
      width: "8rem",
    },
  ];
  return (
    <div className={css.part}>
      <h3>{t("stays.classes")}</h3>
      <DataTable
        caption={t("stays.classes")}
        columns={columns}
        rows={bundle.smallClasses}
        rowKey={(one) => `${one.test} ${one.variant} ${one.ageBand} ${one.category}`}
        maxHeight="18rem"
      />
    </div>
  );
}
