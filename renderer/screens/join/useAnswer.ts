import { useEffect } from "react";
import { hearAnswer } from "./asking.ts";

/** How often the table's answer is asked for, in ms. */
const everyMs = 1_000;

/** Asks for the answer until there is one; a yes leads to this device's place. */
export function useAnswer(ask: string | null, onRefused: (state: "no" | "gone") => void): void {
  useEffect(() => {
    if (ask === null) return;
    let over = false;
    async function look(secret: string): Promise<void> {
      const state = await hearAnswer(secret);
      if (over) return;
      if (state === "yes") location.replace("/");
      else if (state === "no" || state === "gone") onRefused(state);
      else setTimeout(() => void look(secret), everyMs);
    }
    void look(ask);
    return () => {
      over = true;
    };
  }, [ask, onRefused]);
}
