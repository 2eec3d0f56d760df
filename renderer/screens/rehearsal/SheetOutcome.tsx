import { useTranslation } from "react-i18next";
import { writeNumber } from "../../app/numbers.ts";
import { useSay } from "../../app/say.ts";
import { Panel, Section } from "../../parts/Panel.tsx";
import { LineList } from "../sheets/LineList.tsx";
import { asSentence } from "../sheets/sheet.ts";
import css from "./RehearsalScreen.module.css";
import type { RehearsedSheet } from "./rehearsed.ts";

/** What became of one sheet, and which of its rows somebody has to look at. */
export function SheetOutcome({ sheet }: { readonly sheet: RehearsedSheet }) {
  const { t, i18n } = useTranslation(["rehearsal", "sheets"]);
  const say = useSay();
  const { taken, keptBack, unusual, unknown, refused } = sheet;
  const kind = t(`sheets:kind.${sheet.kind}`);
  if (refused !== null) {
    return (
      <Panel tone="alert" title={t(`refused.${sheet.kind}`)}>
        <p>{say(asSentence(refused))}</p>
      </Panel>
    );
  }
  return (
    <>
      <Section title={t("sheet.taken", { kind, count: taken, shown: writeNumber(taken, i18n.language) })}>
        <div className={css.notes}>
          {keptBack === 0 && <p>{t("sheet.clean")}</p>}
          {unknown.length > 0 && (
            <p>{t("sheet.unknown", { count: unknown.length, columns: unknown.join(", ") })}</p>
          )}
        </div>
      </Section>
      {keptBack > 0 && <KeptBackRows sheet={sheet} kind={kind} />}
      {unusual > 0 && <UnusualRows sheet={sheet} kind={kind} />}
    </>
  );
}

interface RowsProps {
  readonly sheet: RehearsedSheet;
  readonly kind: string;
}

function KeptBackRows({ sheet: { keptBack, keptBackRows }, kind }: RowsProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const say = useSay();
  return (
    <LineList
      title={t("sheet.keptBack", { kind, count: keptBack })}
      lead={t("sheet.keptBackLead")}
      lines={keptBackRows.map(({ line, field, reason, cells }) => ({
        line,
        says: (
          <>
            {field !== null && <strong>{t(`sheets:field.${field}` as "sheets:field.league")}: </strong>}
            {say(asSentence(reason))}
          </>
        ),
        stands: cells.filter((cell) => cell.trim() !== "").join(" · "),
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
