import { useTranslation } from "react-i18next";
import type { Boxes } from "../../../electron/domain/keyed/boxes.ts";
import { choiceOf } from "../../../electron/domain/keyed/keyed.ts";
import type { Choosing, Field } from "../../../electron/domain/tests/fields.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../app/testWords.ts";
import { useLengthUnit } from "../../words/lengths.ts";
import css from "./RecordPage.module.css";
import type { PaperPerson } from "./which.ts";

interface RecordTableProps {
  readonly test: TestCode;
  readonly boxes: Boxes;
  readonly lines: readonly (PaperPerson | null)[];
}

/** A line for each athlete, with the boxes in the order in which they are entered. */
export function RecordTable({ test, boxes, lines }: RecordTableProps) {
  const { t } = useTranslation("papers");
  const { tick, groups } = boxes;
  const tickLabel = useTickLabel(test, tick);
  const count = groups.reduce((sum, { fields }) => sum + fields.length, 0);
  return (
    <table className={css.table} data-boxes={count + (tick === null ? 0 : 1)}>
      <Widths tick={tick !== null} boxes={count} />
      <thead>
        <Groups test={test} boxes={boxes} />
        <tr>
          <th className={css.bib}>{t("record.bib")}</th>
          <th className={css.who}>{t("record.who")}</th>
          {tick !== null && <th className={css.tick}>{tickLabel}</th>}
          {groups.map(({ option, fields }) =>
            fields.map((field, index) => (
              <th key={`${option} ${field.name}`} data-first={index === 0}>
                <FieldLabel test={test} field={field} />
              </th>
            )),
          )}
          <th>{t("record.time")}</th>
          <th>{t("record.initials")}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((person, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: empty lines have no names, and never change places
          <tr key={index}>
            <td className={css.bib}>{person?.bib}</td>
            <td className={css.who}>{person !== null && <Who person={person} />}</td>
            {tick !== null && <Tick test={test} tick={tick} />}
            {groups.map(({ option, fields }) =>
              fields.map(({ name }, at) => <td key={`${option} ${name}`} data-first={at === 0} />),
            )}
            <td />
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function useTickLabel(test: TestCode, tick: Choosing | null): string {
  const testWord = useTestWords();
  return tick === null ? "" : testWord(test, `choice.${tick.name}.label`);
}

/** The boxes share what bib, name, time and initials leave. */
function Widths({ tick, boxes }: { readonly tick: boolean; readonly boxes: number }) {
  return (
    <colgroup>
      <col className={css.bibWide} />
      <col className={css.whoWide} />
      {tick && <col className={css.tickWide} />}
      <col span={boxes} />
      <col className={css.shortWide} span={2} />
    </colgroup>
  );
}

/** What the groups of boxes are for, above them; nothing where there is one. */
function Groups({ test, boxes: { groups } }: Pick<RecordTableProps, "test" | "boxes">) {
  const testWord = useTestWords();
  const name = choiceOf(test)?.name ?? "";
  if (groups.length === 1) return null;
  return (
    <tr>
      <td colSpan={2} />
      {groups.map(({ option, fields }) => (
        <th key={option} className={css.group} colSpan={fields.length}>
          {option !== null && testWord(test, `choice.${name}.${option}`)}
        </th>
      ))}
      <td colSpan={2} />
    </tr>
  );
}

function FieldLabel({ test, field }: { readonly test: TestCode; readonly field: Field }) {
  const { t } = useTranslation("common");
  const testWord = useTestWords();
  const { lengths } = useLengthUnit();
  return (
    <>
      {testWord(test, `field.${field.name}`)}
      {field.unit === "length" && ` (${t(`unit.${lengths}`)})`}
    </>
  );
}

/** Two options, one of which is ticked. */
function Tick({ test, tick }: { readonly test: TestCode; readonly tick: Choosing }) {
  const testWord = useTestWords();
  return (
    <td className={css.tick}>
      {tick.options.map((option) => (
        <span key={option}>{testWord(test, `choice.${tick.name}.${option}`)}</span>
      ))}
    </td>
  );
}

/** By the name where that was agreed to; else the bib says it, or the number in the league. */
function Who({ person: { name, bib, number, league } }: { readonly person: PaperPerson }) {
  return (
    <>
      {(name !== null || bib === null) && <b>{name ?? number}</b>} <span>{league}</span>
    </>
  );
}
