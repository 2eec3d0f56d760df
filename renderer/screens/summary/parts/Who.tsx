import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import css from "./Everybody.module.css";

interface WhoProps {
  readonly who: { readonly athleteId: number; readonly name: string };
  /** Facts under the name, joined by commas. */
  readonly facts: readonly string[];
}

/** Shows an athlete's name, linked to their page, with a fact or two. */
export function Who({ who, facts }: WhoProps) {
  return (
    <span className={css.who}>
      <Link href={`/athletes/${who.athleteId}`}>{who.name}</Link>
      {facts.length > 0 && <span className={css.facts}>{facts.join(", ")}</span>}
    </span>
  );
}

interface Known {
  readonly bib: number | null;
  readonly number: string;
  readonly league: string;
}

/** Returns what tells athletes of one name apart: the bib, else the number, and the league where there are several. */
export function useFacts(whole: boolean): (who: Known) => string[] {
  const { t } = useTranslation("summary");
  return ({ bib, number, league }) => [
    ...(bib === null ? [] : [t("everybody.bib", { bib })]),
    ...(bib !== null || number === "" ? [] : [t("everybody.number", { number })]),
    ...(whole ? [league] : []),
  ];
}
