/** What a thread's own timer, set to every 125 ms, came to. */
export interface Counted {
  readonly count: number;
  readonly longestGapMs: number;
}

let [count, longestGapMs, last] = [0, 0, performance.now()];

setInterval(() => {
  const now = performance.now();
  count += 1;
  longestGapMs = Math.max(longestGapMs, now - last);
  last = now;
}, 125);

self.onmessage = () => self.postMessage({ count, longestGapMs } satisfies Counted);
