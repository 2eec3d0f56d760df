import { pastTime, time } from "../cells.ts";
import type { SheetTest } from "../definition.ts";
import type { CoreAttempt } from "./protocol.ts";

/** The staged plank on sheets: the time held. */
export const coreSheet: SheetTest<CoreAttempt> = {
  columns: [{ name: "time", unit: "s", means: "Plank: time held, as it was taken", kind: "seen" }],
  read: (cells) => ({ held: time(cells, "time") }),
  write: ({ held }) => ({ time: held / 1000 }),
  readPast: (cells) => ({ seen: { held: pastTime(cells) } }),
};
