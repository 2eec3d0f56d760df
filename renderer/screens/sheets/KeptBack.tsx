import { useTranslation } from "react-i18next";
import { useTRPCClient } from "../../app/client.tsx";
import { useSay } from "../../app/say.ts";
import { Button } from "../../parts/Button.tsx";
import { Section } from "../../parts/Panel.tsx";
import css from "./KeptBack.module.css";
import { saveText } from "./save.ts";
import type { KeptBackRow } from "./sheet.ts";
import type { SheetInHand } from "./useSheet.ts";

interface KeptBackProps {
  /** The first of them. */
  readonly rows: readonly KeptBackRow[];
  /** All of them. */
  readonly count: number;
  readonly sheet: SheetInHand;
}

/** The rows that stay outside, each with its line, why, and what stands there; they can be saved to be put right. */
export function KeptBack({ rows, count, sheet }: KeptBackProps) {
  const { t } = useTranslation("sheets");
  const client = useTRPCClient();
  const { uploadId } = sheet;
  const save = uploadId !== null && (
    <Button onPress={() => void saveText(client.intake.keptBackSheet.query({ uploadId }))}>
      {t("keptBack.save")}
    </Button>
  );
  return (
    <Section title={t("keptBack.title", { count })} aside={save}>
      <p className={css.lead}>{t("keptBack.lead")}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className={css.scroll} aria-label={t("keptBack.title", { count })} tabIndex={0}>
        <ul>
          {rows.map((row) => (
            <Row key={row.line} row={row} />
          ))}
        </ul>
      </section>
      {rows.length < count && <p>{t("keptBack.first", { shown: rows.length, count })}</p>}
    </Section>
  );
}

function Row({ row }: { readonly row: KeptBackRow }) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const { key, values } = row.reason;
  const field = row.field === null ? null : t(`field.${row.field}` as "field.league");
  return (
    <li className={css.row}>
      <span className={css.line}>{t("line", { line: row.line })}</span>
      <div>
        <p>
          {field !== null && <strong>{field}: </strong>}
          {say(values === undefined ? { key } : { key, values })}
        </p>
        <p className={css.cells}>{row.cells.filter((cell) => cell.trim() !== "").join(" · ")}</p>
      </div>
    </li>
  );
}
