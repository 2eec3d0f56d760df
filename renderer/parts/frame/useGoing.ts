import { type RefObject, useEffect, useRef } from "react";
import { forget, leave, type Message, oldMs, readingMs } from "../../app/messages.ts";

/**
 * Lets a message go once it was read: some seconds, more for more letters, and not while it is held. What needs somebody
 * stays; an undo goes in any case before it is old.
 */
export function useGoing(message: Message | null, letters: number, isHeld: boolean): void {
  useEffect(() => {
    if (message === null || message.tone === "alert" || isHeld) return;
    const timer = setTimeout(() => forget(message), readingMs(letters, message.action !== undefined));
    return () => clearTimeout(timer);
  }, [message, letters, isHeld]);
  useEffect(() => {
    if (message?.action === undefined) return;
    const timer = setTimeout(() => forget(message), oldMs);
    return () => clearTimeout(timer);
  }, [message]);
}

/** Takes a message away with the screen or the day that it belongs to; `name` says which it is now. */
export function useLeaving(what: "screen" | "day", name: string): void {
  const before = useRef(name);
  useEffect(() => {
    if (before.current !== name) leave(what);
    before.current = name;
  }, [what, name]);
}

/** Where the keyboard was before a press in the strip, so that typing goes on there when the message is gone. */
export function useReturn(strip: RefObject<HTMLElement | null>): { note: () => void; goBack: () => void } {
  const before = useRef<Element | null>(null);
  return {
    note() {
      const { activeElement } = document;
      if (strip.current?.contains(activeElement) !== true) before.current = activeElement;
    },
    goBack() {
      const place = before.current;
      before.current = null;
      if (place instanceof HTMLElement && place.isConnected && place !== document.body) place.focus();
      else document.querySelector("main")?.focus({ preventScroll: true });
    },
  };
}
