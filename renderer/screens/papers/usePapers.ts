import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useDaySheets } from "../../app/daySheets.ts";
import { useTestWords } from "../../app/testWords.ts";
import type { PaperDay } from "./PaperPages.tsx";
import type { Papers, What, Who } from "./which.ts";

/** What the papers of the day at hand are made of; null until it is there. */
export function usePapers() {
  const trpc = useTRPC();
  const { day, sheets, noDay } = useDaySheets();
  const people = useQuery(trpc.papers.people.queryOptions(undefined, { enabled: day !== null }));
  const isThere = sheets !== null && people.data !== undefined;
  return { all: isThere ? { ...sheets, papers: people.data } : null, noDay, people };
}

export type AllPapers = Omit<PaperDay, "who"> & { readonly papers: Papers };

/** Says for whom papers are. */
export function useWhoText(): (papers: Papers, who: Who) => string {
  const { t } = useTranslation("papers");
  return ({ leagues }, who) => {
    switch (who.kind) {
      case "league":
        return leagues.find(({ id }) => id === who.leagueId)?.name ?? "";
      case "bibs":
        return t("who.bibs", { from: who.from, to: who.to });
      default:
        return t(`who.${who.kind}`);
    }
  };
}

/** What a kind of paper is called. */
export function useWhatText(): (what: What) => string {
  const { t } = useTranslation("papers");
  const testWord = useTestWords();
  return (what) => {
    if (what === "records" || what === "bibs" || what === "badges") return t(`what.${what}`);
    return t("what.record", { number: testCodes.indexOf(what) + 1, test: testWord(what, "name") });
  };
}
