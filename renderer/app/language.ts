import { useQuery } from "@tanstack/react-query";
import i18next from "i18next";
import { useEffect } from "react";
import { client, useTRPC } from "./client.tsx";

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
  const trpc = useTRPC();
  const language = useQuery(trpc.language.current.queryOptions()).data?.language;
  useEffect(() => {
    if (language !== undefined && language !== i18next.language) void i18next.changeLanguage(language);
  }, [language]);
}
