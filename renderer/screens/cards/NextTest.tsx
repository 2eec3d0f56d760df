import { useId } from "react";
import { useTranslation } from "react-i18next";
import { windowWeeks } from "../../../electron/domain/cards/window.ts";
import { useWriteSpan } from "../../words/dates.ts";
import css from "./After.module.css";
import type { Cards } from "./which.ts";

/** Shows the two dates between which the next test is worth taking, with the weeks until then on a tape. */
export function NextTest({ next: { from, until } }: { readonly next: Cards["next"] }) {
  const { t } = useTranslation("cards");
  const writeSpan = useWriteSpan();
  const id = useId();
  return (
    <section className={css.part} aria-labelledby={id}>
      <h2 id={id}>{t("card.next.title")}</h2>
      <p className={css.chief}>{writeSpan(from, until)}</p>
      <Weeks />
      <p>{t("card.next.weeks", { ...windowWeeks })}</p>
    </section>
  );
}

/** Length of a week in units of the drawing. */
const week = 10;
const named = [4, 8, windowWeeks.from, windowWeeks.until];

function Weeks() {
  const { t } = useTranslation("cards");
  const { from, until } = windowWeeks;
  return (
    <svg className={css.weeks} viewBox="-2 0 182 26" aria-hidden="true">
      <rect className={css.window} x={from * week} y={1} width={(until - from) * week} height={13} />
      <path d={`M0 1h${until * week}M0 14h${until * week}`} />
      {Array.from({ length: until + 1 }, (_none, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the weeks of a tape never change their order
        <path key={index} d={`M${index * week} 14v${index % 4 === 0 || index >= from ? -8 : -4}`} />
      ))}
      <text x={0} y={24} textAnchor="start">
        {t("card.next.today")}
      </text>
      {named.map((weeks) => (
        <text key={weeks} x={weeks * week} y={24} textAnchor="middle">
          {weeks}
        </text>
      ))}
    </svg>
  );
}
