import { useEffect, useRef } from "react";
import { soundEngine } from "../../sound/useSound.ts";
import type { Live } from "../live/tool.ts";

/** Returns the lanes that the next missed rep ends; plays a sound when another one joins them. */
export function useWarnings(live: Live<"push-up">): readonly number[] {
  const warned = live.lanes.filter(({ state }) => state.warning).map(({ lane }) => lane);
  const sounded = useRef<ReadonlySet<number>>(new Set());
  const names = warned.join(" ");
  useEffect(() => {
    const now = new Set(names === "" ? [] : names.split(" ").map(Number));
    const isNew = [...now].some((lane) => !sounded.current.has(lane));
    sounded.current = now;
    if (isNew) soundEngine().play("two-off");
  }, [names]);
  return warned;
}
