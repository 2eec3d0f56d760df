import { useTranslation } from "react-i18next";

interface Known {
  readonly bib: number | null;
  readonly number: string;
  readonly league: string;
}

/** What tells athletes of one name apart: the bib, or the number of who has none; and the league where there are several. */
export function useFacts(whole: boolean): (who: Known) => string[] {
  const { t } = useTranslation("summary");
  return ({ bib, number, league }) => [
    ...(bib === null ? [] : [t("everybody.bib", { bib })]),
    ...(bib !== null || number === "" ? [] : [t("everybody.number", { number })]),
    ...(whole ? [league] : []),
  ];
}
