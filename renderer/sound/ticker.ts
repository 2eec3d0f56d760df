/** Calls `tick` about eight times a second, even while the window is hidden, until the returned function is called. */
export function startTicker(tick: () => void): () => void {
  const worker = new Worker(new URL("./ticker.worker.ts", import.meta.url), {
    type: "module",
    name: "ticker",
  });
  let timer: ReturnType<typeof setInterval> | undefined;
  worker.addEventListener("message", tick);
  worker.addEventListener("error", (event) => {
    console.error("The ticker's own thread failed; the page's timer stands in.", event.message);
    timer ??= setInterval(tick, standInMs);
  });
  return () => {
    worker.terminate();
    clearInterval(timer);
  };
}

const standInMs = 125;
