import { useCallback, useLayoutEffect, useRef } from "react";

/** Returns a function that stays the same one and does what the newest `act` does: for rows that need not render again. */
export function useSteady<Arguments extends unknown[]>(
  act: (...given: Arguments) => void,
): (...given: Arguments) => void {
  const latest = useRef(act);
  useLayoutEffect(() => {
    latest.current = act;
  });
  return useCallback((...given) => latest.current(...given), []);
}

/**
 * Compares what two renderings of a row are given: data by content, since an entry above makes every row's objects new,
 * and all else by identity.
 */
export function isSameRow<Props extends object>(before: Props, now: Props): boolean {
  return (Object.keys({ ...before, ...now }) as (keyof Props)[]).every((name) =>
    isSame(before[name], now[name]),
  );
}

function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  return (
    typeof one === "object" && typeof other === "object" && JSON.stringify(one) === JSON.stringify(other)
  );
}
