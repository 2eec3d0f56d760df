import { readyMinute } from "../../../electron/domain/queue/queue.ts";
import { useWriteTime } from "../../words/dates.ts";

/** Returns a writer of a rest's end: the first whole minute at which it is over, so that nobody is sent away then. */
export function useWriteReady(): (readyAt: string) => string {
  const writeTime = useWriteTime();
  return (readyAt) => writeTime(readyMinute(readyAt));
}
