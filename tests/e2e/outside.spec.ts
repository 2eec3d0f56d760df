import { createSocket } from "node:dgram";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { expect, type Page } from "@playwright/test";
import { test as base } from "./fixture.ts";
import { goToNothing, listenToRefusals, statusOf, withoutContentPolicy } from "./page.ts";

/** Nothing gets out, no page leads away, and no page is given anything of the machine. */

interface Outside {
  /** `http://127.0.0.1:…` of a server that answers everybody. */
  readonly url: string;
  readonly port: number;
  /** How many requests, connections and packets it has had. */
  readonly reached: () => number;
}

/** A place outside the app that would notice being reached: by HTTP, and by packets on the same port. */
const test = base.extend<{ outside: Outside }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
  outside: async ({}, use) => {
    let reached = 0;
    const server = createServer((_request, response) => {
      response.setHeader("access-control-allow-origin", "*");
      response.end("reached");
    });
    server.on("connection", () => {
      reached += 1;
    });
    await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
    const { port } = server.address() as AddressInfo;
    const packets = createSocket("udp4", () => {
      reached += 1;
    });
    await new Promise<void>((resolve) => packets.bind(port, "127.0.0.1", resolve));
    await use({ url: `http://127.0.0.1:${port}`, port, reached: () => reached });
    packets.close();
    server.closeAllConnections();
    server.close();
  },
});

test("a page's request to another place is refused and counted, whatever it is made with", async ({
  tapeline,
  outside,
}) => {
  const { desk } = tapeline;
  expect(await tapeline.blocked()).toEqual({ count: 0, last: "" });
  // The content policy stops it before it becomes a request at all.
  expect(await statusOf(desk, outside.url)).toBe("TypeError");
  expect((await tapeline.blocked()).count).toBe(0);
  await withoutContentPolicy(tapeline.app, desk);
  const before = (await tapeline.blocked()).count;
  expect(await statusOf(desk, outside.url)).toBe("TypeError");
  expect(await tapeline.blocked()).toEqual({ count: before + 1, last: outside.url });
  expect(await pictureLoads(desk, `${outside.url}/a.png`)).toBe(false);
  expect(await socketOpens(desk, `ws://127.0.0.1:${outside.port}`)).toBe(false);
  expect((await tapeline.blocked()).count).toBe(before + 3);
  expect(outside.reached()).toBe(0);
});

test("a peer connection sends no packet past the filter", async ({ tapeline, outside }) => {
  const candidates = await tapeline.desk.evaluate(async (port) => {
    const connection = new RTCPeerConnection({ iceServers: [{ urls: `stun:127.0.0.1:${port}` }] });
    connection.createDataChannel("probe");
    const found: string[] = [];
    const gathered = new Promise<void>((resolve) => {
      connection.onicecandidate = (event) =>
        event.candidate ? found.push(event.candidate.candidate) : resolve();
    });
    await connection.setLocalDescription(await connection.createOffer());
    await gathered;
    connection.close();
    return found;
  }, outside.port);
  expect(candidates).toEqual([]);
  expect(outside.reached()).toBe(0);
});

test("a session that nobody planned for is under guard too", async ({ tapeline, outside }) => {
  const answer = await tapeline.app.evaluate(async ({ session }, url) => {
    const stranger = session.fromPartition("stranger");
    return stranger.fetch(url).then(
      (response) => response.status,
      (error: unknown) => String(error),
    );
  }, outside.url);
  expect(answer).toContain("ERR_BLOCKED_BY_CLIENT");
  expect(outside.reached()).toBe(0);
  expect((await tapeline.blocked()).last).toBe(outside.url);
});

test("a page can't be led away", async ({ tapeline, outside }) => {
  await tapeline.openBoard();
  await withoutContentPolicy(tapeline.app, tapeline.desk);
  const own = tapeline.desk.url();
  const { refused } = await listenToRefusals(tapeline.app, tapeline.desk);
  for (const address of [`${outside.url}/`, "app://board/", "file:///etc/passwd", "data:text/html,away"]) {
    await tapeline.desk.evaluate((url) => {
      location.href = url;
    }, address);
    await refused(address);
    expect.soft(tapeline.desk.url(), address).toBe(own);
  }
  await tapeline.desk.evaluate((url) => {
    const form = Object.assign(document.createElement("form"), { method: "POST", action: url });
    document.body.append(form);
    form.submit();
  }, "app://board/trpc/day.create");
  await refused("app://board/trpc/day.create");
  expect(tapeline.desk.url()).toBe(own);
  // It may still move within its own host, so the refusals are not for want of any moving.
  await tapeline.desk.evaluate(() => {
    location.href = "app://desk/index.html";
  });
  await tapeline.desk.waitForURL("app://desk/index.html");
  expect(outside.reached()).toBe(0);
});

test("a page that is led to an empty one comes back to where it was", async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  await tapeline.desk.evaluate(() => {
    location.hash = "/lock";
  });
  await expect(tapeline.desk.getByRole("heading", { name: "Choose a PIN" })).toBeVisible();
  for (const [page, heading] of [
    [tapeline.desk, "Choose a PIN"],
    [board, "No testing day is open yet"],
  ] as const) {
    for (const address of ["about:blank", "about:blank#/lock"]) {
      const before = page.url();
      await goToNothing(page, address);
      await expect(page, address).toHaveURL(before);
      await expect(page.getByRole("heading", { name: heading })).toBeVisible();
    }
  }
  expect((await tapeline.blocked()).count).toBe(0);
});

test("no page opens a window or a frame of another place", async ({ tapeline, outside }) => {
  await withoutContentPolicy(tapeline.app, tapeline.desk);
  const opened = await tapeline.desk.evaluate((url) => {
    const windows = [url, "app://board/", "app://desk/", "about:blank"].map((each) => window.open(each));
    document.body.append(Object.assign(document.createElement("iframe"), { src: url }));
    return windows.map((each) => each === null);
  }, outside.url);
  expect(opened).toEqual([true, true, true, true]);
  const count = await tapeline.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length);
  expect(count).toBe(1);
  expect(outside.reached()).toBe(0);
});

test("a page is given no permission", async ({ tapeline }) => {
  const answers = await tapeline.desk.evaluate(async () => {
    const named = (work: Promise<unknown>) =>
      work.then(
        () => "given",
        (error: Error) => error.name,
      );
    const place = new Promise((resolve, reject) => {
      navigator.geolocation.getCurrentPosition(resolve, (error) => reject({ name: `code ${error.code}` }));
    });
    const states = ["geolocation", "notifications", "microphone", "camera", "clipboard-read"] as const;
    return {
      place: await named(place),
      screen: await named(navigator.mediaDevices.getDisplayMedia()),
      notices: await Notification.requestPermission(),
      states: await Promise.all(
        states.map((name) =>
          navigator.permissions.query({ name: name as PermissionName }).then(({ state }) => state),
        ),
      ),
    };
  });
  expect(answers).toEqual({
    place: "code 1",
    screen: "NotAllowedError",
    notices: "denied",
    states: ["denied", "denied", "denied", "denied", "denied"],
  });
});

test("no device is picked or paired for a page", async ({ tapeline }) => {
  const policy = await tapeline.desk.evaluate(() =>
    fetch("/").then((response) => response.headers.get("permissions-policy")),
  );
  expect(policy).toContain("bluetooth=()");
  // As the system's radio would ask, which this machine may not have.
  const picked = await tapeline.app.evaluate(({ BrowserWindow }) => {
    const [window] = BrowserWindow.getAllWindows();
    const answers: unknown[] = [];
    const event = { preventDefault: () => answers.push("prevented") };
    const devices = [{ deviceName: "a watch", deviceId: "1" }];
    window?.webContents.emit("select-bluetooth-device", event, devices, (id: string) => answers.push(id));
    return answers;
  });
  expect(picked).toEqual(["prevented", ""]);
});

test("a page can't put a file on the disk by itself", async ({ tapeline }) => {
  // Listening before the page begins, and answered in a second step.
  await tapeline.app.evaluate(({ session }) => {
    const prevented = new Promise<boolean>((resolve) => {
      session.fromPartition("desk").once("will-download", (event) => resolve(event.defaultPrevented));
    });
    Object.assign(globalThis, { prevented });
  });
  await tapeline.desk.evaluate(() => {
    const href = URL.createObjectURL(new Blob(["content"]));
    Object.assign(document.createElement("a"), { href, download: "dropped.txt" }).click();
  });
  expect(await tapeline.app.evaluate(() => Reflect.get(globalThis, "prevented"))).toBe(true);
});

function pictureLoads(page: Page, url: string): Promise<boolean> {
  return page.evaluate((address) => {
    const picture = new Image();
    return new Promise<boolean>((resolve) => {
      picture.onload = () => resolve(true);
      picture.onerror = () => resolve(false);
      picture.src = address;
    });
  }, url);
}

function socketOpens(page: Page, url: string): Promise<boolean> {
  return page.evaluate((address) => {
    const socket = new WebSocket(address);
    return new Promise<boolean>((resolve) => {
      socket.onopen = () => resolve(true);
      socket.onerror = () => resolve(false);
    });
  }, url);
}
