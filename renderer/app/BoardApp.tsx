import { useReady } from "./ready.ts";

/** Everything in the board's window. */
export function BoardApp() {
  useReady(true);
  return <main />;
}
