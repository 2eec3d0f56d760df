import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import css from "./Athletes.module.css";
import type { Listed } from "./types.ts";

interface AthletesTableProps {
  readonly people: readonly Listed[];
  readonly onClear: () => void;
}

/** Lists athletes, one per row: who they are, their tests today, and their consents. */
export function AthletesTable({ people, onClear }: AthletesTableProps) {
  const { t } = useTranslation("athletes");
  const columns = useColumns();
  return (
    <DataTable<Listed>
      caption={t("title")}
      rows={people}
      rowKey={({ athleteId }) => athleteId}
      nameColumn="name"
      columns={columns}
      maxHeight="none"
      empty={
        <EmptyState
          title={t("nobody.title")}
          steps={[t("nobody.step")]}
          action={<Button onPress={onClear}>{t("nobody.clear")}</Button>}
        />
      }
    />
  );
}

function useColumns(): Column<Listed>[] {
  const { t } = useTranslation("athletes");
  return [
    {
      key: "number",
      head: t("column.number"),
      kind: "number",
      width: "4.5rem",
      cell: ({ number }) => <strong className={css.number}>{number === "" ? "–" : number}</strong>,
    },
    {
      key: "name",
      head: t("column.name"),
      cell: ({ athleteId, name }) => (
        <Link className={css.open} href={`/athletes/${athleteId}`}>
          {name}
        </Link>
      ),
    },
    { key: "league", head: t("column.league"), cell: ({ league }) => league },
    {
      key: "state",
      head: t("column.state"),
      width: "9.5rem",
      cell: ({ state, bib }) =>
        state === "testing" ? (
          <Tag tone="go">{t("state.testing", { bib })}</Tag>
        ) : (
          t(`state.${state ?? "unlisted"}`)
        ),
    },
    {
      key: "tested",
      head: t("column.tested"),
      width: "7.5rem",
      cell: ({ state, tested, leftOut }) =>
        state === null ? "" : <Dots done={tested} of={testCodes.length - leftOut.length} />,
    },
    { key: "board", head: t("column.board"), width: "6rem", cell: ({ board }) => t(`board.${board}`) },
    {
      key: "share",
      head: t("column.share"),
      width: "6.5rem",
      cell: ({ share }) => t(`share.${share ? "yes" : "no"}`),
    },
    {
      key: "guardian",
      head: t("column.guardian"),
      width: "7rem",
      cell: ({ mayBeUnder18, guardianConsent }) => {
        if (!mayBeUnder18) return "";
        return guardianConsent ? t("guardian.seen") : <Tag tone="alert">{t("guardian.missing")}</Tag>;
      },
    },
  ];
}

/** Draws "3/5": tests done, of those that the athlete takes. */
function Dots({ done, of }: { readonly done: number; readonly of: number }) {
  return (
    <span>
      <strong>{done}</strong> / {of}
    </span>
  );
}
