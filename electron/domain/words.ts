/**
 * A sentence for people, not yet in any language: a key of `resources/locales/<language>/sentences.json` and its
 * values. The domain and the API speak in sentences; only the edge (a window, a sheet of rows not imported) turns them
 * into text, so that a language can change at once.
 */
export interface Sentence {
  readonly key: string;
  readonly values?: Readonly<Record<string, string | number>>;
}

/** Makes a sentence; a test checks that the word files have every key given here. */
export function sentence(key: string, values?: Sentence["values"]): Sentence {
  return values === undefined ? { key } : { key, values };
}
