import { Fragment } from "react";
import { useTranslation } from "react-i18next";
import type { AnyPart } from "../summary.ts";
import css from "./Paper.module.css";
import type { Piece } from "./pack.ts";

interface PartOnPaperProps {
  readonly part: AnyPart;
  readonly piece: Omit<Piece, "part">;
}

/** Lays out a piece of one part on one page: its heading, some lines of its table, and at the end how to read it. */
export function PartOnPaper({ part, piece }: PartOnPaperProps) {
  const { t } = useTranslation("summary");
  const { title, lead, lines, empty, notes = [] } = part;
  const continued = piece.from > 0;
  return (
    <section>
      <header data-measure="heading" className={css.heading}>
        <h2>{continued ? t("paper.continued", { title }) : title}</h2>
        {lead !== undefined && !continued && <p>{lead}</p>}
        {lines.length === 0 && <p>{empty}</p>}
      </header>
      {piece.to > piece.from && <Lines part={part} piece={piece} />}
      <footer data-measure="after" className={css.after}>
        {piece.after && lines.length > 0 && notes.map((note) => <p key={note}>{note}</p>)}
      </footer>
    </section>
  );
}

function Lines({ part, piece }: PartOnPaperProps) {
  const { columns, lines, lineKey, nameColumn = columns[0]?.key, paperWidths = [] } = part;
  return (
    <table className={css.table}>
      <colgroup>
        {columns.map(({ key }, index) => (
          <col key={key} style={{ width: `${paperWidths[index] ?? 100 / columns.length}%` }} />
        ))}
      </colgroup>
      <thead data-measure="head">
        <tr>
          {columns.map(({ key, head, kind = "text" }) => (
            <th key={key} scope="col" data-kind={kind}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.slice(piece.from, piece.to).map((line) => (
          <tr key={lineKey(line)} data-measure="line">
            {columns.map(({ key, cell, kind = "text" }) => (
              <Fragment key={key}>
                {key === nameColumn ? (
                  <th scope="row" data-kind={kind}>
                    {cell(line)}
                  </th>
                ) : (
                  <td data-kind={kind}>{cell(line)}</td>
                )}
              </Fragment>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
