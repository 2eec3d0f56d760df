import { useEffect, useState, useSyncExternalStore } from "react";
import type { Best } from "../../../electron/api/board/schemas.ts";
import { hasNews, type Scene, secondsOf } from "./scenes.ts";

/** The state of the rotation. */
export interface Turn {
  readonly index: number;
  /** Number of completed rounds: lists continue where they stopped the round before. */
  readonly round: number;
  /** Increases with each change of scene, and with each interruption. */
  readonly count: number;
  /** True if a new best interrupted: this is not the scene's usual turn. */
  readonly news: boolean;
}

const start: Turn = { index: 0, round: 0, count: 0, news: false };

function after(turn: Turn, scenes: number): Turn {
  const index = (turn.index + 1) % scenes;
  return { index, round: turn.round + (index === 0 ? 1 : 0), count: turn.count + 1, news: false };
}

/** Shows the scenes in turn; a new best brings the first scene back in the very frame in which it arrives. */
export function useRotation(scenes: readonly Scene[], newest: readonly Best[]): Turn {
  const [turn, setTurn] = useState(start);
  const [before, setBefore] = useState(newest);
  let now = turn;
  if (before !== newest) {
    if (hasNews(before, newest)) now = { ...turn, index: 0, count: turn.count + 1, news: true };
    setBefore(newest);
    if (now !== turn) setTurn(now);
  }
  const index = Math.min(now.index, scenes.length - 1);
  const seconds = secondsOf[scenes[index]?.kind ?? "newest"];
  const { count } = now;
  useEffect(() => {
    // Only the turn that has ended is followed by the next; an interruption has started another one.
    const end = (current: Turn) =>
      current.count === count ? after({ ...current, index }, scenes.length) : current;
    const timer = setTimeout(() => setTurn(end), seconds * 1000);
    return () => clearTimeout(timer);
  }, [count, index, seconds, scenes.length]);
  return { ...now, index };
}

const wide = matchMedia("(min-aspect-ratio: 3/2)");

function listen(changed: () => void): () => void {
  wide.addEventListener("change", changed);
  return () => wide.removeEventListener("change", changed);
}

/** Returns true if the screen is wider than an old projector's 4 : 3. */
export function useWide(): boolean {
  return useSyncExternalStore(listen, () => wide.matches);
}

/** How many places the picture has, and ms in each. */
const drifts = { places: 6, everyMs: 120_000 };

/** Returns where the whole picture stands: it moves a little now and then, so that no line burns into the screen. */
export function useDrift(): number {
  const [place, setPlace] = useState(0);
  useEffect(() => {
    const timer = setTimeout(() => setPlace((place + 1) % drifts.places), drifts.everyMs);
    return () => clearTimeout(timer);
  }, [place]);
  return place;
}
