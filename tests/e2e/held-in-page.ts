/** What a held page lets the main process do with its clocks. */
interface PageClock {
  /**
   * Resolves once no request is under way and nothing is about to happen: in a test a moment may take no time, so what a
   * press brings about a moment later comes before time passes. What the page asks from then on waits for `pass`.
   */
  quiet(): Promise<void>;
  /** So many ms later, with whatever was put off until then; and whatever waits may go. */
  pass(ms: number): Promise<void>;
}

declare global {
  var heldPage: PageClock | undefined;
}

/**
 * Stops the clocks that a page reads: `performance.now`, the wall clock, and the time stamps of events; what it puts off
 * comes when the test lets so much time pass. What comes in a moment, in intervals or with the next frame goes on, so that
 * what is shown follows. The page runs the text of this function: it sees nothing around it.
 * @param wall ms since 1970
 */
export function holdInPage(wall: number): void {
  if (globalThis.heldPage !== undefined) return;
  /** What is put off by less than this, in ms, comes in a moment. */
  const aMoment = 100;
  const longest = 2 ** 31 - 1;
  let now = wall;
  // In whole ms, as the main process's are: no sum of them is off by a rounding.
  const begin = Math.round(wall - performance.now());
  const send = globalThis.fetch;
  const underWay = new Set<Promise<unknown>>();
  const [setTimer, clearTimer] = [globalThis.setTimeout, globalThis.clearTimeout];
  const moments = new Set<unknown>();
  const putOff = new Map<unknown, { readonly at: number; readonly work: () => void }>();
  let mayGo = Promise.resolve();
  let open = () => {};

  performance.now = () => now - begin;
  Object.defineProperty(performance, "timeOrigin", { get: () => begin });
  Object.defineProperty(Event.prototype, "timeStamp", { get: () => now - begin });
  globalThis.Date = new Proxy(Date, {
    construct: (target, args, made) => Reflect.construct(target, args.length === 0 ? [now] : args, made),
    get: (target, name) => (name === "now" ? () => now : Reflect.get(target, name)),
  });
  // An answer says what time it was when it was made, so none may be under way while time passes.
  globalThis.fetch = async (...sent) => {
    await mayGo;
    const answer = send(...sent);
    underWay.add(answer);
    try {
      return await answer;
    } finally {
      underWay.delete(answer);
    }
  };
  const timer = (work: (...all: unknown[]) => void, ms = 0, ...all: unknown[]) => {
    const isSoon = ms < aMoment;
    const id = setTimer(come, isSoon ? ms : longest);
    function come(): void {
      clearTimer(id);
      moments.delete(id);
      putOff.delete(id);
      work(...all);
    }
    if (isSoon) moments.add(id);
    else putOff.set(id, { at: now + ms, work: come });
    return id;
  };
  globalThis.setTimeout = timer as typeof setTimeout;
  globalThis.clearTimeout = (id) => {
    moments.delete(id);
    putOff.delete(id);
    clearTimer(id);
  };
  async function settled(): Promise<void> {
    while (underWay.size > 0) await Promise.allSettled(underWay);
  }

  globalThis.heldPage = {
    async quiet() {
      // What was drawn may lead to more, which is drawn too.
      for (let turn = 0; turn < 4; turn += 1) await new Promise((resolve) => setTimer(resolve, 0));
      // What comes again and again in a moment (a try after a try that failed) never ends: some seconds are enough.
      for (let turn = 0; moments.size > 0 && turn < 1_000; turn += 1)
        await new Promise((resolve) => setTimer(resolve, 5));
      mayGo = new Promise((resolve) => {
        open = resolve;
      });
      // A request that was asked for in this very moment may wait for `pass` itself: then this does not wait for it.
      const gaveUp = new Promise<void>((resolve) => setTimer(resolve, 10_000));
      await Promise.race([gaveUp, settled()]);
    },
    async pass(ms) {
      const until = now + ms;
      for (;;) {
        const [next] = [...putOff.values()].sort((one, other) => one.at - other.at);
        if (next === undefined || next.at > until) break;
        now = Math.max(now, next.at);
        next.work();
        // What it leads to at once comes before what is next.
        await Promise.resolve();
      }
      now = until;
      open();
    },
  };
}
