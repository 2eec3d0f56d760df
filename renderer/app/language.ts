import { useQuery } from "@tanstack/react-query";
import i18next from "i18next";
import { useEffect } from "react";
import { client, useTRPC } from "./client.tsx";
import { useOwnLanguage } from "./ownLanguage.ts";

/** Returns the desk's language for a new page; English without an answer, until `useLanguage` has one. */
export async function languageToBegin(): Promise<string> {
  try {
    return (await client.language.current.query()).language;
  } catch (error) {
    console.error(error);
    return "en";
  }
}

/** Keeps this window in the desk's language, which any window may change; use it once per window. */
export function useLanguage(): void {
  useSpoken(null);
}

/** The same, but for a device that has a language of its own: it keeps that one. */
export function useLanguageOfPerson(): void {
  useSpoken(useOwnLanguage());
}

function useSpoken(own: string | null): void {
  const trpc = useTRPC();
  const ofDesk = useQuery(trpc.language.current.queryOptions()).data?.language;
  const language = own ?? ofDesk;
  useEffect(() => {
    if (language !== undefined && language !== i18next.language) void i18next.changeLanguage(language);
  }, [language]);
}
