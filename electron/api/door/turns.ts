/**
 * Makes what does one piece of work in each turn of the event loop, in the order in which they came: between two of them
 * whatever else has come is looked at.
 */
function oneATurn(): <Result>(work: () => Result | Promise<Result>) => Promise<Result> {
  let before: Promise<void> = Promise.resolve();
  return (work) => {
    before = before.then(() => new Promise((resolve) => void setImmediate(resolve)));
    return before.then(work);
  };
}

/**
 * What a dozen devices ask at each change, one after another: the table's own windows would wait until all of them
 * are answered, since the requests of windows come by the event loop's other half, Electron's own.
 */
export const devicesInTurn = oneATurn();

/** So many ms later than the windows devices hear of a change: long enough for these to have asked. */
const headStartMs = 8;

/**
 * Does a head start later what it is given, and what it is given in one go at once: with a timer of its own each, those begun
 * a millisecond later would wait for a later turn of the event loop, and for all that other ones ask before it.
 */
function together(): (work: () => void) => void {
  let gathered: (() => void)[] | null = null;
  return (work) => {
    if (gathered !== null) return void gathered.push(work);
    const all = [work];
    gathered = all;
    queueMicrotask(() => (gathered = null));
    setTimeout(() => {
      for (const each of all) each();
    }, headStartMs);
  };
}

/** Tells all devices of a change, a head start after the table's own windows. */
export const afterWindows = together();
