import type { ReactNode } from "react";
import { useTranslation } from "react-i18next";
import { Section } from "../layout/Panel.tsx";
import css from "./LineList.module.css";

/** A remark on one line of the sheet. */
interface AboutLine {
  readonly line: number;
  readonly says: ReactNode;
  /** The text of that line, cut to one line of the screen. */
  readonly stands: string;
}

interface LineListProps {
  readonly title: string;
  readonly lead: string;
  readonly lines: readonly AboutLine[];
  /** A button at the right of the heading. */
  readonly aside?: ReactNode;
  /** A line under the list, if it does not show all. */
  readonly more?: string | undefined;
}

/** Lists lines of the sheet with a remark on each; a long list scrolls inside. */
export function LineList({ title, lead, lines, aside, more }: LineListProps) {
  const { t } = useTranslation("sheets");
  return (
    <Section title={title} aside={aside}>
      <p>{lead}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section className={css.scroll} aria-label={title} tabIndex={0}>
        <ul>
          {lines.map(({ line, says, stands }) => (
            <li key={line} className={css.row}>
              <span className="strong">{t("line", { line })}</span>
              <span>{says}</span>
              <span className="one-line quiet" title={stands}>
                {stands}
              </span>
            </li>
          ))}
        </ul>
      </section>
      {more !== undefined && <p>{more}</p>}
    </Section>
  );
}
