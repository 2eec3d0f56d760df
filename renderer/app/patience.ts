/** No answer came in time: whether it was accepted is unknown. */
export class NoAnswer extends Error {}

/** How long an answer to what was entered is waited for before it is sent again, in ms. */
const patienceMs = 8_000;

/**
 * Asks the table, and gives up when nothing comes: a connection that died silently never ends by itself.
 * @throws NoAnswer after eight seconds.
 */
export function withPatience<Answer>(ask: (signal: AbortSignal) => Promise<Answer>): Promise<Answer> {
  const stop = new AbortController();
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      stop.abort();
      reject(new NoAnswer("no answer"));
    }, patienceMs);
    ask(stop.signal)
      .then(resolve, reject)
      .finally(() => clearTimeout(timer));
  });
}

/** Fetches, and gives up when nothing comes for eight seconds. Whoever asks hears of it as of any answer that is missing. */
export function patientFetch(
  input: RequestInfo | URL,
  init: { readonly signal?: AbortSignal | null | undefined } = {},
): Promise<Response> {
  const late = AbortSignal.timeout(patienceMs);
  const signal = init.signal == null ? late : AbortSignal.any([init.signal, late]);
  return fetch(input, { ...init, signal });
}
