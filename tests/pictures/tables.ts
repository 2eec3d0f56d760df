import { largeTable } from "../unit/reference/large-table.ts";
import { tableOf } from "../unit/reference/making-table.ts";
import type { Studio } from "./app.ts";
import { takeBoardAt } from "./board.ts";
import { go, take, takeWhole } from "./take.ts";

const table = tableOf({ ...largeTable, publisher: "The harbour table" });

/** Results from elsewhere, before a reference table is brought in, while its key is compared, and after. */
export async function takeTables({ desk, offer, board }: Studio): Promise<void> {
  await go(desk, "/reference");
  await takeWhole(desk, "tables-none");
  await offer("table.zip", table);
  await desk.getByRole("button", { name: "Choose a file" }).click();
  await desk.getByRole("button", { name: "The key is right: add this table" }).waitFor();
  await takeWhole(desk, "tables-key");
  await desk.getByRole("button", { name: "The key is right: add this table" }).click();
  await desk
    .getByRole("region", { name: "Reference tables" })
    .getByText("The harbour table")
    .first()
    .waitFor();
  await take(desk, "tables-held");
  await takeWhole(desk, "tables-held-whole");
  await go(desk, "/athletes/5");
  await takeWhole(desk, "tables-athlete");
  await go(desk, "/cards/current/athlete-5");
  await takeWhole(desk, "tables-card");
  await takeBoardAt(await board(), "tables-board", [1920, 1080]);
}
