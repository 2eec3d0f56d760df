import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/protocols/protocol.ts";
import { type Column, DataTable } from "../../parts/DataTable.tsx";
import { useWriteDay } from "../station/clock.ts";
import { useWriteChange } from "../station/write.ts";
import type { Series } from "./types.ts";
import { WrittenMark } from "./WrittenMark.tsx";

interface SeriesTableProps {
  readonly series: Series;
  readonly lengths: LengthUnit;
}

type Row = Series["points"][number] & { readonly place: number };

/** The marks of one test, newest first: each against the one before it, and against the best before it. */
export function SeriesTable({ series: { test, points }, lengths }: SeriesTableProps) {
  const { t } = useTranslation(["athletes", "common"]);
  const columns = useColumns(useWriteChange(test, lengths));
  return (
    <DataTable<Row>
      caption={t("series.table", { test: t(`common:test.${test}.ability`) })}
      rows={points.map((point, place) => ({ ...point, place })).toReversed()}
      rowKey={({ place }) => place}
      columns={columns}
      maxHeight="20rem"
    />
  );
}

function useColumns(writeChange: (change: number) => string): Column<Row>[] {
  const { t } = useTranslation(["athletes", "station"]);
  const writeDay = useWriteDay();
  return [
    {
      key: "date",
      head: t("series.column.date"),
      width: "8rem",
      cell: ({ date, today }) => (today ? t("series.today") : writeDay(date)),
    },
    {
      key: "mark",
      head: t("series.column.mark"),
      width: "7.5rem",
      cell: ({ written }) => <WrittenMark written={written} />,
    },
    {
      key: "says",
      head: t("series.column.says"),
      cell: ({ change, verdict, standing, source }) => {
        const said = [
          ...(change === null || verdict === null
            ? []
            : [change === 0 ? t("series.same") : writeChange(change), t(`series.short.${verdict}`)]),
          ...(standing === "best" || standing === "first" ? [t(`series.standing.${standing}`)] : []),
          ...(source === "imported" ? [t("series.imported")] : []),
        ];
        return said.join(", ");
      },
    },
  ];
}
