/** How long a device waits for an answer of the table, in ms. */
const patienceMs = 8_000;

/**
 * Fetches, and gives up when nothing comes for eight seconds: a connection that died silently never ends by itself.
 * Whoever asks hears of it as of any answer that is missing, and may send the same again.
 */
export function patientFetch(
  input: RequestInfo | URL,
  init: { readonly signal?: AbortSignal | null | undefined } = {},
): Promise<Response> {
  const late = AbortSignal.timeout(patienceMs);
  const signal = init.signal == null ? late : AbortSignal.any([init.signal, late]);
  return fetch(input, { ...init, signal });
}
