import { useTranslation } from "react-i18next";
import { useSay } from "../../app/say.ts";
import { Section } from "../../parts/Panel.tsx";
import { whoIn } from "./cells.tsx";
import css from "./KeptBack.module.css";
import type { PreviewRow } from "./sheet.ts";

interface UnusualProps {
  readonly rows: readonly PreviewRow[];
  readonly count: number;
}

/** Rows that are taken and still deserve a second look; the desk puts them first. */
export function Unusual({ rows, count }: UnusualProps) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  return (
    <Section title={t("unusual.title", { count })}>
      <p className={css.lead}>{t("unusual.lead")}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className={css.scroll} aria-label={t("unusual.title", { count })} tabIndex={0}>
        <ul>
          {rows.map(({ line, unusual, cells }) =>
            unusual === null ? null : (
              <li key={line} className={css.row}>
                <span className={css.line}>{t("line", { line })}</span>
                <div>
                  <p>
                    {say(
                      unusual.values === undefined
                        ? { key: unusual.key }
                        : { key: unusual.key, values: unusual.values },
                    )}
                  </p>
                  <p className={css.cells}>{whoIn(cells, t)}</p>
                </div>
              </li>
            ),
          )}
        </ul>
      </section>
    </Section>
  );
}
