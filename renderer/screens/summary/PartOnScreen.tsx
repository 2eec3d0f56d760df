import { DataTable } from "../../parts/DataTable.tsx";
import { Section } from "../../parts/Panel.tsx";
import css from "./Summary.module.css";
import type { AnyPart } from "./summary.ts";

/** One part under its heading: a sentence, the table, and how to read it. */
export function PartOnScreen({ part }: { readonly part: AnyPart }) {
  const { title, aside, lead, columns, lines, lineKey, nameColumn, empty, notes = [], rowHeight } = part;
  return (
    <Section title={title} aside={aside}>
      {lead !== undefined && <p className={css.lead}>{lead}</p>}
      <DataTable
        caption={title}
        columns={columns}
        rows={lines}
        rowKey={lineKey}
        empty={<p className={css.quiet}>{empty}</p>}
        maxHeight="75vh"
        {...(nameColumn !== undefined && { nameColumn })}
        {...(rowHeight !== undefined && { rowHeight })}
      />
      {lines.length > 0 && notes.length > 0 && (
        <div className={css.notes}>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </div>
      )}
    </Section>
  );
}
