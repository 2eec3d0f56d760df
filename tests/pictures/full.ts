import { join } from "node:path";
import { crowdedDay } from "../door/crowd.ts";
import type { Studio } from "./app.ts";
import { takeBoardAt, takeScenes } from "./board.ts";
import { takeBeside, takePlaces } from "./places.ts";
import { takeStudy } from "./study.ts";
import { go, takeWhole } from "./take.ts";

/** A store with 200 athletes, long names among them, who have done all five tests. */
export async function fillFolder(folder: string): Promise<void> {
  const { desk } = await crowdedDay(200, join(folder, "tapeline.sqlite"));
  desk.close();
}

/** As full as a day gets. */
export async function takeFull({ desk, board: openBoard }: Studio): Promise<void> {
  await takePlaces(desk, "full");
  await takeBeside(desk, "full");
  await takeStudy(desk, "full");
  await go(desk, "/athletes/5");
  await takeWhole(desk, "full-athlete");
  const board = await openBoard();
  await board.clock.install();
  await takeScenes(board, "full-board", [1920, 1080]);
  await takeScenes(board, "full-board-1024", [1024, 768]);
  await board.reload();
  await takeBoardAt(board, "full-board-3840", [3840, 2160]);
}
