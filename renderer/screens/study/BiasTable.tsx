import { useTranslation } from "react-i18next";
import { leastForWord } from "../../../electron/domain/study/shape.ts";
import { column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { type BiasLine, useBiasLines } from "./biasLines.ts";
import type { ResultProps } from "./types.ts";

/** Lists each series' bias with its interval and a sentence on what can be said; of visits, what the second shifted. */
export function BiasTable({ study, result }: ResultProps) {
  const { t } = useTranslation("study");
  const lines = useBiasLines(study, result);
  const { kind } = study.study;
  return (
    <>
      <p className="measure">{t(`bias.lead.${kind}`)}</p>
      <DataTable<BiasLine>
        caption={t(`bias.title.${kind}`)}
        rows={lines}
        rowKey={({ name }) => name}
        rowHeight={72}
        maxHeight="none"
        whole
        columns={[
          column("name", t(`bias.name.${kind}`), "14rem", ({ name }) => name),
          numberColumn("bias", t("bias.bias"), "9rem", ({ bias }) => <strong>{bias}</strong>),
          column("range", t("bias.range"), "12rem", ({ range }) => range),
          column("says", t("bias.says"), "auto", ({ says }) => says),
        ]}
      />
      {result.athletes < leastForWord && <p>{t("bias.fewer", { count: leastForWord })}</p>}
    </>
  );
}
