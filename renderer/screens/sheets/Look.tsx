import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { BigNumber } from "../../parts/marks/BigNumber.tsx";
import { Choices } from "../../parts/sheets/Choices.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { Mapping } from "../../parts/sheets/Mapping.tsx";
import { changesOf, type Preview } from "../../parts/sheets/sheet.ts";
import { writeNumber } from "../../words/numbers.ts";
import { KeptBack } from "./KeptBack.tsx";
import css from "./Sheets.module.css";
import { TakenRows } from "./TakenRows.tsx";
import { Changes, Unusual } from "./Unusual.tsx";
import type { SheetInHand } from "./useSheet.ts";
import { WhoIsWho } from "./WhoIsWho.tsx";

interface LookProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** Shows what a sheet would change: the counts, the rows that need a look, and the first rows. */
export function Look({ preview, sheet }: LookProps) {
  const canRead = preview.missing.length === 0;
  return (
    <>
      {canRead && <Glance preview={preview} sheet={sheet} />}
      {canRead && <WhoIsWho preview={preview} sheet={sheet} />}
      <Choices key="choices" form={preview} said={sheet.said} onSay={sheet.say} />
      {/* One place for it, so that a column chosen by keyboard keeps the focus while the sheet is read anew. */}
      <Mapping key="mapping" form={preview} mapping={sheet.mapping} onMap={sheet.map} />
      {canRead && <Rows preview={preview} sheet={sheet} />}
    </>
  );
}

function Rows({ preview, sheet }: LookProps) {
  const { t, i18n } = useTranslation("sheets");
  const { counts, rows } = preview;
  const taken = counts.new + counts.changed + counts.known;
  const of = writeNumber(taken, i18n.language);
  return (
    <>
      {counts.keptBack > 0 && (
        <KeptBack
          rows={preview.keptBack}
          count={counts.keptBack}
          others={taken > 0 ? "goIn" : "none"}
          sheet={sheet}
          form={preview}
        />
      )}
      {preview.leftOut.length > 0 && <LeftOut rows={preview.leftOut} sheet={sheet} />}
      {counts.unusual > 0 && <Unusual rows={rows} count={counts.unusual} />}
      {counts.changed > 0 && <Changes rows={rows} count={counts.changed} />}
      {taken > 0 && (
        <Section
          title={t("rows.title")}
          aside={rows.length < taken && <p>{t("rows.first", { shown: rows.length, of })}</p>}
        >
          <TakenRows preview={preview} sheet={sheet} />
        </Section>
      )}
    </>
  );
}

/** Shows the sheet in a few numbers, with the import button. */
function Glance({ preview, sheet }: { readonly preview: Preview; readonly sheet: SheetInHand }) {
  const { t, i18n } = useTranslation("sheets");
  const trpc = useTRPC();
  const { counts, kind } = preview;
  const take = useMutation(
    trpc.intake.take.mutationOptions({
      onSuccess(taken) {
        sheet.isTaken(taken);
        const count = changesOf(taken.counts);
        tell({
          tone: "done",
          sentence: {
            key: "sheets:done.told",
            values: { count, shown: writeNumber(count, i18n.language) },
          },
        });
      },
    }),
  );
  const changes = changesOf(counts);
  const shown = (["new", "changed", "known", "unusual", "keptBack"] as const).filter(
    (name) => counts[name] > 0 || name === "new" || name === "keptBack",
  );

  function takeIn(): void {
    if (sheet.asked !== null) take.mutate({ ...sheet.asked, kind, fileName: sheet.name ?? "" });
  }
  return (
    <Row gap={6} lines={4} align="end" wrap between>
      <Row gap={7} lines={4} wrap role="status">
        {shown.map((name) => (
          <BigNumber
            key={name}
            label={t(`count.${name}`)}
            number={writeNumber(counts[name], i18n.language)}
            tone={name === "keptBack" && counts.keptBack > 0 ? "alert" : "plain"}
          />
        ))}
      </Row>
      {preview.questionCount > 0 ? (
        <Button size="large" disabled>
          {t("take.waits", { count: preview.questionCount })}
        </Button>
      ) : changes > 0 ? (
        <Button kind="primary" size="large" busy={take.isPending} onPress={takeIn}>
          {t("take.button", { count: changes, shown: writeNumber(changes, i18n.language) })}
        </Button>
      ) : (
        <p className={`lead strong ${css.nothing}`}>
          {counts.known > 0 ? t("take.already") : t("take.nothing")}
        </p>
      )}
      {kind === "roster" && counts.joined > counts.new && (
        <p className={css.joined}>{t("take.joined", { count: counts.joined - counts.new })}</p>
      )}
    </Row>
  );
}

/** Lists the rows that somebody chose not to import, each with a button that undoes it. */
function LeftOut({ rows, sheet }: { readonly rows: Preview["leftOut"]; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const lines = rows.map(({ line, text }) => ({
    line,
    says: (
      <Button label={t("leftOut.backOf", { line })} onPress={() => sheet.bringBack(line)}>
        {t("leftOut.back")}
      </Button>
    ),
    stands: text,
  }));
  return (
    <LineList title={t("leftOut.title", { count: rows.length })} lead={t("leftOut.lead")} lines={lines} />
  );
}
