import { useTranslation } from "react-i18next";
import { Panel } from "../../parts/layout/Panel.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { asSentence } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { writeNumber } from "../../words/numbers.ts";
import { useSay } from "../../words/say.ts";
import { isAboutHeaders, type RehearsedSheet } from "./rehearsed.ts";

/** Lists the rows of one sheet that somebody has to look at; nothing where there are none. */
export function SheetOutcome({ sheet }: { readonly sheet: RehearsedSheet }) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const say = useSay();
  const kind = t(`sheets:kind.${sheet.kind}`);
  if (sheet.refused !== null) {
    return (
      <Panel tone="alert" title={t(`refused.${sheet.kind}`)}>
        <p>{say(asSentence(sheet.refused))}</p>
        {isAboutHeaders(sheet.refused) && <p>{t("refused.headers")}</p>}
      </Panel>
    );
  }
  return (
    <>
      {sheet.keptBack > 0 && <KeptBackRows sheet={sheet} kind={kind} />}
      {sheet.unusual > 0 && <UnusualRows sheet={sheet} kind={kind} />}
    </>
  );
}

/** Counts the rows imported from a sheet, in one line, and names the columns that were ignored. */
export function TakenLine({ sheet }: { readonly sheet: RehearsedSheet }) {
  const { t, i18n } = useTranslation(["rehearsal", "sheets"]);
  const { taken, unknown, file } = sheet;
  const kind = t(`sheets:kind.${sheet.kind}`);
  if (sheet.invented) {
    return (
      <li>
        <strong>{t("sheet.invented", { count: taken, shown: writeNumber(taken, i18n.language) })}</strong>
      </li>
    );
  }
  return (
    <li>
      <strong>{t("sheet.taken", { kind, count: taken, shown: writeNumber(taken, i18n.language) })}</strong>{" "}
      <span className="quiet">{file}</span>
      {unknown.length > 0 && (
        <span> {t("sheet.unknown", { count: unknown.length, columns: unknown.join(", ") })}</span>
      )}
    </li>
  );
}

interface RowsProps {
  readonly sheet: RehearsedSheet;
  readonly kind: string;
}

function KeptBackRows({ sheet: { keptBack, keptBackRows }, kind }: RowsProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const fieldName = useFieldName();
  const say = useSay();
  return (
    <LineList
      title={t("sheet.keptBack", { kind, count: keptBack })}
      lead={t("sheet.keptBackLead")}
      lines={keptBackRows.map((row) => ({
        line: row.line,
        says: [row, ...row.also].map(({ field, reason }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: reasons have no names, and never change places
          <p key={index}>
            {field !== null && <strong>{fieldName(field)}: </strong>}
            {say(asSentence(reason))}
          </p>
        )),
        stands: row.cells.filter((cell) => cell.trim() !== "").join(" · "),
      }))}
      more={more(keptBackRows.length, keptBack)}
    />
  );

  function more(shown: number, count: number): string | undefined {
    return shown < count ? t("sheet.first", { shown, count }) : undefined;
  }
}

function UnusualRows({ sheet: { unusual, unusualRows }, kind }: RowsProps) {
  const { t } = useTranslation("rehearsal");
  const say = useSay();
  return (
    <LineList
      title={t("sheet.unusual", { kind, count: unusual })}
      lead={t("sheet.unusualLead")}
      lines={unusualRows.map(({ line, sentence }) => ({ line, says: say(asSentence(sentence)), stands: "" }))}
    />
  );
}
