import type { Page } from "@playwright/test";
import { devicePlaceSchema } from "../../electron/domain/devices/place.ts";
import { callDoor } from "../e2e/page.ts";
import { freePort, post, type Reached } from "../network/table.ts";
import { openDemo, readDoor, type Studio } from "./app.ts";
import { go, type Size, take, takeAt, takeWhole } from "./take.ts";

/** The smallest window in which a table is held. */
const small: Size = [1024, 768];

/** Devices of an invented hall, each with its place. */
const hall = [
  ["Red tablet", { role: "check-in" }],
  ["Leire's phone", { role: "station", test: "core" }],
  ["Hall television", { role: "board" }],
  ["Blue tablet", { role: "station", test: "push-up" }],
  ["Old laptop by the window with the plant", { role: "station", test: "agility" }],
  ["Phone 3", { role: "station", test: "vertical" }],
  ["Phone 4", { role: "station", test: "vertical" }],
  ["Green tablet", { role: "station", test: "endurance" }],
  ["Bar screen", { role: "board" }],
  ["Door screen", { role: "board" }],
  ["Phone 5", { role: "station", test: "push-up" }],
  ["Spare phone", { role: "check-in" }],
] as const;

/** The organiser's screen for devices, with none, three and twelve of them, at the desk's two sizes. */
export async function takeDevices({ desk }: Studio): Promise<void> {
  await openDemo(desk);
  await go(desk, "/devices");
  await take(desk, "devices-off");
  await takeAt(desk, small, "devices-off-small");
  const port = await freePort();
  const table = { port, origin: `https://127.0.0.1:${port}` };
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.getByRole("button", { name: "Show a code" }).waitFor();
  await take(desk, "devices-none");
  await takeAt(desk, small, "devices-none-small");
  for (const [count, [name, place]] of hall.entries()) {
    await join(desk, table, name, place, async () => {
      if (count !== 3) return;
      await desk.getByRole("button", { name: "Let it in" }).waitFor();
      await takeWhole(desk, "devices-three-and-one-asks");
      await takeAt(desk, small, "devices-asks-small");
    });
    if (count === 2) await takeWhole(desk, "devices-three");
  }
  await takeWhole(desk, "devices-twelve");
  await takeAt(desk, small, "devices-twelve-small");
  await callDoor(desk, "network.closeJoining", {});
  await callDoor(desk, "network.turnOff", {});
}

interface View {
  readonly code: { readonly code: string } | null;
  readonly asking: readonly { readonly id: string; readonly name: string }[];
}

function view(desk: Page): Promise<View> {
  return readDoor(desk, "network.view") as Promise<View>;
}

/** Lets a device join from outside, as a browser does; `asked` runs while it waits. */
async function join(
  desk: Page,
  table: Reached,
  name: string,
  place: unknown,
  asked: () => Promise<void>,
): Promise<void> {
  if ((await view(desk)).code === null) await callDoor(desk, "network.openJoining", {});
  const { code } = await view(desk);
  const answer = await post(table, "/join/ask", { code: code?.code, name });
  const { ask } = JSON.parse(answer.text) as { ask: string };
  await asked();
  const waiting = (await view(desk)).asking.find((each) => each.name === name);
  await callDoor(desk, "network.answer", { askId: waiting?.id, place: devicePlaceSchema.parse(place) });
  const { headers } = await post(table, "/join/wait", { ask });
  const cookie = String(headers["set-cookie"]).split(";", 1)[0] ?? "";
  await post(table, "/device/here", { waiting: name.length % 3, battery: 30 + name.length }, { cookie });
}
