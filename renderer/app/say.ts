import i18next, { type TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../electron/domain/words.ts";

/** Keys of sentences come over the wire, so the compiler cannot check them; a test does. */
type AnyKey = (key: string, values?: Record<string, unknown>) => string;

/** A sentence of the domain or the API in the language of now; for rendering use {@link useSay}. */
export function say(sentence: Sentence, translate: TFunction<never> = i18next.t as TFunction<never>): string {
  const any = translate as unknown as AnyKey;
  const key = sentence.key.includes(":") ? sentence.key : `sentences:${sentence.key}`;
  return any(key, { ...sentence.values });
}

/** `const say = useSay(); say(sentence)`: renders again when the language changes. */
export function useSay(): (sentence: Sentence) => string {
  const { t } = useTranslation();
  return (sentence) => say(sentence, t as unknown as TFunction<never>);
}
