import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import type { PaperDay } from "./PaperPages.tsx";
import type { Papers, What, Who } from "./which.ts";

/** What the papers of the day at hand are made of; null until it is there. */
export function usePapers() {
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day ?? null;
  const enabled = day !== null;
  const tests = useQuery(trpc.day.protocols.queryOptions(undefined, { enabled }));
  const people = useQuery(trpc.papers.people.queryOptions(undefined, { enabled }));
  const isThere = day !== null && tests.data !== undefined && people.data !== undefined;
  return {
    all: isThere ? { day, tests: tests.data, papers: people.data } : null,
    /** True when there is no day to print for. */
    noDay: current.data !== undefined && day === null,
    people,
  };
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
