import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import type { FoundPerson } from "../people.ts";

/** Number of results that fit beside the sheet without scrolling. */
const limit = 8;

interface Search {
  readonly people: readonly FoundPerson[];
  /** Number of further results. */
  readonly more: number;
  /** False until the first answer. */
  readonly answered: boolean;
  /** Returns the athletes that match the text now: waits for the answer, since a scanner presses Enter at once. */
  readonly now: () => Promise<readonly FoundPerson[]>;
}

/** Searches for the typed text as it is typed. */
export function useSearch(query: string): Search {
  const trpc = useTRPC();
  const options = trpc.checkIn.search.queryOptions({ query, limit });
  const answer = useQuery({ ...options, placeholderData: keepPreviousData });
  return {
    people: answer.data?.people ?? [],
    more: answer.data?.more ?? 0,
    answered: answer.data !== undefined,
    now: async () => (await queryClient.fetchQuery(options)).people,
  };
}

/** Returns true if digits match several athletes equally, so that none may be opened unseen. */
export function isUndecided(query: string, people: readonly FoundPerson[]): boolean {
  const digits = query.trim();
  if (!/^\d+$/.test(digits) || people[0]?.bib === Number(digits)) return false;
  return people.filter(({ number }) => number === digits).length > 1;
}
