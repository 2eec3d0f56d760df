/** What a held page lets the main process do with its clocks. */
export interface PageClock {
  /**
   * Resolves once no request is under way and nothing is about to happen: in a test a moment may take no time, so what a
   * press brings about a moment later comes before time passes. What the page asks from then on waits for `pass`.
   */
  quiet(): Promise<void>;
  /** So many ms later, and whatever waits may go. */
  pass(ms: number): void;
}

declare global {
  var heldPage: PageClock | undefined;
}

/**
 * Stops the clocks that a page reads: `performance.now`, the wall clock, and the time stamps of events. Timers and
 * frames go on, so that what is shown follows. The page runs the text of this function: it sees nothing around it.
 * @param wall ms since 1970
 */
export function holdInPage(wall: number): void {
  if (globalThis.heldPage !== undefined) return;
  /** A timer for less than this, in ms, is for a moment; a longer one is a wait of its own. */
  const aMoment = 100;
  let now = wall;
  // In whole ms, as the main process's are: no sum of them is off by a rounding.
  const begin = Math.round(wall - performance.now());
  const send = globalThis.fetch;
  const underWay = new Set<Promise<unknown>>();
  const [setTimer, clearTimer] = [globalThis.setTimeout, globalThis.clearTimeout];
  const moments = new Set<unknown>();
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
    const id = setTimer(() => {
      moments.delete(id);
      work(...all);
    }, ms);
    if (ms < aMoment) moments.add(id);
    return id;
  };
  globalThis.setTimeout = timer as typeof setTimeout;
  globalThis.clearTimeout = (id) => {
    moments.delete(id);
    clearTimer(id);
  };
  globalThis.heldPage = {
    async quiet() {
      while (moments.size > 0) await new Promise((resolve) => setTimer(resolve, 5));
      mayGo = new Promise((resolve) => {
        open = resolve;
      });
      while (underWay.size > 0) await Promise.allSettled(underWay);
    },
    pass(ms) {
      now += ms;
      open();
    },
  };
}
