import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { writeMoment } from "../../words/dates.ts";
import { type LogEntry, shortHash } from "./preview.ts";

/** Which bundles were made and when, never a row of one. */
export function ExportLog({ entries }: { readonly entries: readonly LogEntry[] }) {
  const { t, i18n } = useTranslation("bundle");
  const columns: Column<LogEntry>[] = [
    { key: "at", head: t("log.when"), cell: ({ at }) => writeMoment(at, i18n.language), width: "14rem" },
    { key: "day", head: t("log.day"), cell: ({ day }) => day?.title ?? "" },
    {
      key: "saved",
      head: t("log.saved"),
      cell: ({ saved }) => (saved ? t("log.left") : t("log.notSaved")),
      width: "11rem",
    },
    { key: "k", head: t("log.k"), kind: "number", cell: ({ k }) => k, width: "12rem" },
    {
      key: "sha256",
      head: t("log.sha"),
      cell: ({ sha256 }) => <span title={sha256}>{shortHash(sha256)}</span>,
      width: "14rem",
    },
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
