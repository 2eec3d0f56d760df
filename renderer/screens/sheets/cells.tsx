import type { TFunction } from "i18next";
import { sheetColumns } from "../../../electron/domain/tests/sheet-columns.ts";
import type { PreviewRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import css from "./Sheets.module.css";

type Cells = PreviewRow["cells"];

/** Fields with columns of their own, which name the athlete and the test; all others are what was seen. */
const named = [
  "league",
  "number",
  "name",
  "bib",
  "test",
  "variant",
  "date",
  "mark",
  "unit",
  "entered_by",
  "note",
];

/** Formats the athlete of a row in one line. */
export function whoIn({ bib, league, number, name }: Cells, t: TFunction<"sheets">): string {
  const parts = [
    bib === undefined ? "" : t("who.bib", { bib }),
    name ?? "",
    number === undefined ? "" : t("who.number", { number }),
    league ?? "",
  ];
  return parts.filter((part) => part !== "").join(" · ");
}

const columns = new Map(sheetColumns().map((column) => [column.name, column]));

/** Shows what was seen: each filled cell with the name of its column. */
export function Seen({ cells }: { readonly cells: Cells }) {
  const fieldName = useFieldName();
  const seen = Object.entries(cells).filter(([field]) => !named.includes(field));
  const unit = cells.unit === undefined ? "" : ` ${cells.unit}`;
  const words = seen.map(([field, text]) => {
    const column = columns.get(field);
    if (column?.kind === "way") return text;
    return `${fieldName(field)} ${column?.unit === "cm" ? `${text}${unit}` : text}`;
  });
  return <span className={`small two-lines ${css.seen}`}>{words.join(" · ")}</span>;
}

/** Formats a mark with its unit, unless the mark itself shows it. */
export function markIn({ mark = "", unit = "" }: Cells): string {
  return mark.includes(":") ? mark : `${mark} ${unit}`.trim();
}
