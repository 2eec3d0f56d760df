/**
 * A sentence for people, not yet in any language: a key of `resources/locales/<language>/sentences.json` and the values
 * that stand in it. The domain and the API speak in sentences; only the edge (a window, a sheet of kept-back rows)
 * turns them into text, so that a language can change at once.
 */
export interface Sentence {
  readonly key: string;
  readonly values?: Readonly<Record<string, string | number>>;
}

/** Makes a sentence; every key given here is looked for in the word files by a test. */
export function sentence(key: string, values?: Sentence["values"]): Sentence {
  return values === undefined ? { key } : { key, values };
}
