import { useTranslation } from "react-i18next";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { writeMoment } from "../../words/dates.ts";
import { type LogEntry, shortHash } from "./preview.ts";

/** Lists the bundles that were made, newest first, never a row of one. */
export function ExportLog({ entries }: { readonly entries: readonly LogEntry[] }) {
  const { t, i18n } = useTranslation("bundle");
  const columns: Column<LogEntry>[] = [
    column("at", t("log.when"), "14rem", ({ at }) => writeMoment(at, i18n.language)),
    column("day", t("log.day"), "auto", ({ day }) => day?.title ?? ""),
    column("saved", t("log.saved"), "11rem", ({ saved }) => (saved ? t("log.left") : t("log.notSaved"))),
    numberColumn("k", t("log.k"), "12rem", ({ k }) => k),
    column("sha256", t("log.sha"), "14rem", ({ sha256 }) => <span title={sha256}>{shortHash(sha256)}</span>),
  ];
  return (
    <Section title={t("log.title")}>
      <DataTable
        caption={t("log.caption")}
        columns={columns}
        rows={entries}
        rowKey={({ id }) => id}
        empty={<p>{t("log.none")}</p>}
        maxHeight="18rem"
      />
    </Section>
  );
}
