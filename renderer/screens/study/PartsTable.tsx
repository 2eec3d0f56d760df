import { useTranslation } from "react-i18next";
import { column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import type { Result, ResultProps } from "./types.ts";
import { useAmount } from "./words.ts";

/** The parts of the variance, in the order in which people ask for them. */
const order = ["athletes", "series", "rest"] as const;

type PartLine = Result["parts"][(typeof order)[number]] & { readonly key: (typeof order)[number] };

/** Lists what all readings differ by: the athletes, the judges or visits as a whole, and the rest. */
export function PartsTable({ study, result: { parts } }: ResultProps) {
  const { t } = useTranslation("study");
  const amount = useAmount();
  const { kind } = study.study;
  const rows = order.map((key): PartLine => ({ key, ...parts[key] }));
  return (
    <>
      <p className="measure">{t("parts.lead")}</p>
      <DataTable<PartLine>
        caption={t("parts.title")}
        rows={rows}
        rowKey={({ key }) => key}
        rowHeight={72}
        maxHeight="none"
        whole
        columns={[
          column("part", t("parts.part"), "14rem", ({ key }) => t(`parts.of.${kind}.${key}`)),
          numberColumn("spread", t("parts.spread"), "11rem", ({ spread }) => (
            <strong>{amount(spread)}</strong>
          )),
          numberColumn("share", t("parts.share"), "9rem", ({ percent }) => `${percent} %`),
          column("means", t("parts.means"), "auto", ({ key, belowZero }) =>
            belowZero ? t("parts.belowZero") : t(`parts.meaning.${kind}.${key}`),
          ),
        ]}
      />
    </>
  );
}
