import { type CSSProperties, memo, type ReactNode, useState } from "react";
import css from "./DataTable.module.css";

/** Height of a row with one line, in px. Rows are about equally high: only visible ones need be in the page. */
const oneLine = 48;
const spare = 12;

export interface Column<Row> {
  readonly key: string;
  /** The head, in words. */
  readonly head: ReactNode;
  readonly cell: (row: Row) => ReactNode;
  /** number: digits are aligned under each other. */
  readonly kind?: "text" | "number";
  /** CSS width, for example "8rem"; the others share the rest. */
  readonly width?: string;
}

/** Makes a column of text; those of width "auto" share what the others leave. */
export function column<Row>(
  key: string,
  head: ReactNode,
  width: string,
  cell: Column<Row>["cell"],
): Column<Row> {
  return { key, head, width, cell };
}

/** Makes a column of numbers, from what `column` takes. */
export function numberColumn<Row>(...of: Parameters<typeof column<Row>>): Column<Row> {
  return { ...column(...of), kind: "number" };
}

interface DataTableProps<Row> {
  /** Describes the table for screen readers. */
  readonly caption: string;
  /** Where the rows change while they are looked at, the same ones every time (`useMemo`). */
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string | number;
  /** The key of the column that names a row; the first by default. */
  readonly nameColumn?: string;
  /** Replaces the rows when there are none. */
  readonly empty?: ReactNode;
  /** Most of the window's height before it scrolls inside, for example "60vh". */
  readonly maxHeight?: string;
  /** The height of every row in px, for cells with more than one line. */
  readonly rowHeight?: number;
  /** True where nothing may be cut: text wraps, and a row is as high as it takes, `rowHeight` at least. */
  readonly whole?: boolean;
}

/** A table with a fixed head and rows of one height: 5,000 are as quick as 50. Cut text is whole in its title. */
export function DataTable<Row>(props: DataTableProps<Row>) {
  const {
    caption,
    columns,
    rows,
    rowKey,
    empty,
    maxHeight = "60vh",
    rowHeight = oneLine,
    whole = false,
  } = props;
  const nameColumn = props.nameColumn ?? columns[0]?.key;
  const [top, setTop] = useState(0);
  // A table that doesn't scroll shows all rows: it can't know how far the page has scrolled.
  const scrolls = maxHeight !== "none";
  const inSight = scrolls ? Math.ceil(window.innerHeight / rowHeight) + 2 * spare : rows.length;
  const first = Math.max(0, Math.min(Math.floor(top / rowHeight) - spare, rows.length - inSight));
  const shown = rows.slice(first, first + inSight);

  if (rows.length === 0 && empty !== undefined) return empty;
  return (
    <section
      className={css.scroll}
      aria-label={caption}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      style={{ maxHeight }}
      onScroll={(event) => setTop(event.currentTarget.scrollTop)}
    >
      <table
        className={css.table}
        aria-rowcount={rows.length + 1}
        style={{ "--row-height": `${rowHeight}px` } as CSSProperties}
      >
        <colgroup>
          {columns.map((column) => (
            <col key={column.key} style={{ width: column.width ?? "auto" }} />
          ))}
        </colgroup>
        <thead>
          <tr aria-rowindex={1}>
            {columns.map((column) => (
              <th key={column.key} scope="col" data-kind={column.kind ?? "text"}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <Gap height={first * rowHeight} columns={columns.length} />
          {shown.map((row, index) => (
            <Line key={rowKey(row)} at={first + index + 2} {...{ columns, nameColumn, row, whole }} />
          ))}
          <Gap height={(rows.length - first - shown.length) * rowHeight} columns={columns.length} />
        </tbody>
      </table>
    </section>
  );
}

interface LineProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly nameColumn: string | undefined;
  readonly row: Row;
  /** Its number in the table, the head's included. */
  readonly at: number;
  readonly whole: boolean;
}

/** Drawn again when its row or the columns are others: with columns that stay the same, a change draws those rows alone that it changed. */
const Line = memo(function Line<Row>({ columns, nameColumn, row, at, whole }: LineProps<Row>) {
  return (
    <tr aria-rowindex={at}>
      {columns.map((column) => (
        <Cell key={column.key} names={column.key === nameColumn} {...{ column, row, whole }} />
      ))}
    </tr>
  );
}) as <Row>(props: LineProps<Row>) => ReactNode;

interface CellProps<Row> {
  readonly column: Column<Row>;
  readonly row: Row;
  readonly names: boolean;
  readonly whole: boolean;
}

function Cell<Row>({ column, row, names, whole }: CellProps<Row>) {
  const content = column.cell(row);
  const title = typeof content === "string" && !whole ? content : undefined;
  const inside = (
    <div className={whole ? css.whole : `one-line ${css.line}`} title={title}>
      {content}
    </div>
  );
  if (names)
    return (
      <th scope="row" data-kind={column.kind ?? "text"}>
        {inside}
      </th>
    );
  return <td data-kind={column.kind ?? "text"}>{inside}</td>;
}

/** Fills the space of hidden rows. */
function Gap({ height, columns }: { readonly height: number; readonly columns: number }) {
  if (height <= 0) return null;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: an empty row holds nothing that takes the focus
    <tr aria-hidden="true">
      <td className={css.gap} colSpan={columns} style={{ height }} />
    </tr>
  );
}
