import { useTranslation } from "react-i18next";
import { forFile } from "./file-name.ts";
import { runCardJob } from "./job.ts";
import type { CardPaper } from "./papers.ts";
import { chosenOf, nameOf, type People, type Which } from "./which.ts";

/** The two ways out for what is chosen. */
export function useWork(people: People, which: Which, paper: CardPaper) {
  const suggestedName = useFileName(people, which, paper);
  const count = chosenOf(people, which).length;
  const page = { path: `/print/cards/${people.day?.id ?? 0}/${nameOf(which)}`, paper, suggestedName };
  return {
    print: () => void runCardJob("print", page, count),
    save: () => void runCardJob("save", page, count),
  };
}

/** "Cards 2026-11-14 A5.pdf", and with the league's or the athlete's name where it is theirs alone. */
function useFileName(people: People, which: Which, paper: CardPaper): string {
  const { t } = useTranslation("cards");
  const values = { date: people.day?.date ?? "", paper: t(`file.paper.${paper}`) };
  if (which.kind === "all") return t("file.all", values);
  const [one] = chosenOf(people, which);
  const name = forFile((which.kind === "league" ? one?.league : one?.name) ?? "");
  return t(`file.${which.kind}`, { ...values, name });
}
