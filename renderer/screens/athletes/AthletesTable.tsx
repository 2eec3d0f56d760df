import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
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
    numberColumn("number", t("column.number"), "6rem", ({ number }) => (
      <strong className={`numeral ${css.number}`}>{number === "" ? "–" : number}</strong>
    )),
    column("name", t("column.name"), "auto", ({ athleteId, name }) => (
      <Link className={css.open} href={`/athletes/${athleteId}`}>
        {name}
      </Link>
    )),
    column("league", t("column.league"), "11rem", ({ league }) => league),
    column("state", t("column.state"), "8.5rem", ({ state, bib }) =>
      state === "testing" ? (
        <Tag tone="go">{t("state.testing", { bib })}</Tag>
      ) : (
        t(`state.${state ?? "unlisted"}`)
      ),
    ),
    column("tested", t("column.tested"), "6rem", ({ state, tested, leftOut }) =>
      state === null ? "" : <Dots done={tested} of={testCodes.length - leftOut.length} />,
    ),
    column("board", t("column.board"), "6rem", ({ board }) => t(`board.${board}`)),
    column("share", t("column.share"), "6.5rem", ({ share }) => t(`share.${share ? "yes" : "no"}`)),
    column("guardian", t("column.guardian"), "7rem", ({ mayBeUnder18, guardianConsent }) => {
      if (!mayBeUnder18) return "";
      return guardianConsent ? t("guardian.seen") : <Tag tone="alert">{t("guardian.missing")}</Tag>;
    }),
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
