/**
 * True if a PIN is among a guesser's first tries: repeated digits, pairs or groups, runs, mirrors, dates. These are one
 * in fifty of all six-digit PINs, so that a good one is soon found.
 */
export function isEasy(pin: string): boolean {
  return (
    new Set(pin).size <= 2 ||
    isStaircase(pin) ||
    isRepeated(pin) ||
    isTwoRuns(pin) ||
    isMirror(pin) ||
    isDate(pin)
  );
}

/** 135791, 112233, 102030, 100200300: each digit, pair or group of three exceeds the one before by the same amount. */
function isStaircase(pin: string): boolean {
  return [1, 2, 3].some((size) => {
    const groups = groupsOf(pin, size);
    if (groups === null || groups.length < 3) return false;
    const all = 10 ** size;
    const steps = groups.slice(1).map((group, index) => (group - (groups[index] ?? 0) + all) % all);
    return new Set(steps).size === 1;
  });
}

function groupsOf(pin: string, size: number): number[] | null {
  if (pin.length % size !== 0) return null;
  return Array.from({ length: pin.length / size }, (_none, at) =>
    Number(pin.slice(at * size, at * size + size)),
  );
}

/** 123123, 1231231: a group of at most half its length repeated, the last time perhaps cut short. */
function isRepeated(pin: string): boolean {
  return [...pin].some(
    (_digit, size) => size > 0 && size <= pin.length / 2 && pin.startsWith(pin.slice(size)),
  );
}

/** 123789, 654456: two halves that each run up or down. */
function isTwoRuns(pin: string): boolean {
  const half = Math.ceil(pin.length / 2);
  return [pin.slice(0, half), pin.slice(half)].every(
    (part) => "01234567890".includes(part) || "09876543210".includes(part),
  );
}

/** 123321, 5903095. */
function isMirror(pin: string): boolean {
  return [...pin].reverse().join("") === pin;
}

const year = "(?:19|20)\\d\\d";
const month = "(?:0[1-9]|1[0-2])";
const day = "(?:0[1-9]|[12]\\d|3[01])";
const dates = new RegExp(
  `^(?:${year}${month}${day}|${day}${month}${year}|${month}${day}${year}|${year}${month}|${month}${year})$`,
);

/**
 * True for a date with a four-digit year. Six-digit dates with a two-digit year are allowed: they are one PIN in
 * twelve, far more than anybody can try.
 */
function isDate(pin: string): boolean {
  return dates.test(pin);
}
