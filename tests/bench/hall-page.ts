import type { Page } from "@playwright/test";
import type { TypedEntry } from "./hall-day.ts";

/** An entry that a page sent; ms of the machine's clock. */
export interface Sent {
  readonly ids: readonly string[];
  /** The Enter that saves. */
  readonly tapAt: number;
  readonly savedAt: number;
}

/** The counts of a station's screen, and when it had painted them. */
export interface Shown {
  readonly done: number;
  readonly later: number;
  readonly at: number;
}

/** What a page asked of the table: requests, and bytes of their answers. */
export interface Asked {
  readonly requests: number;
  readonly bytes: number;
}

interface HallPage {
  readonly sent: Sent[];
  readonly shown: Shown[];
  readonly asked: { requests: number; bytes: number };
  readonly enter: (entry: TypedEntry) => Promise<void>;
}

type InHall = { hall: HallPage };

/** From now on a station's page notes what it sends, shows and asks, and can be told to enter something. */
export async function watchStation(page: Page): Promise<void> {
  await watchAsked(page);
  await watchSent(page);
  await watchCounts(page);
  await giveHands(page);
}

/** Every answer of the door but the stream of changes, from now on. */
function watchAsked(page: Page): Promise<void> {
  return page.evaluate(() => {
    const asked = { requests: 0, bytes: 0 };
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as PerformanceResourceTiming[]) {
        if (!entry.name.includes("/trpc/")) continue;
        asked.requests += 1;
        asked.bytes += entry.encodedBodySize;
      }
    }).observe({ type: "resource" });
    Object.assign(globalThis, { hall: { asked } });
  });
}

/** Each entry with the Enter before it; one that is sent again keeps its first. */
function watchSent(page: Page): Promise<void> {
  return page.evaluate(() => {
    const sent: Sent[] = [];
    const taps = new Map<string, number>();
    const now = () => performance.timeOrigin + performance.now();
    let tapAt = 0;
    addEventListener("keydown", ({ key }) => (tapAt = key === "Enter" ? now() : tapAt), true);
    const ask = fetch;
    window.fetch = async (to, init) => {
      if (!String(to).includes("station.enter")) return ask(to, init);
      const [body] = Object.values(
        JSON.parse(String(init?.body)) as Record<string, { attempts: { id: string }[] }>,
      );
      const ids = (body?.attempts ?? []).map(({ id }) => id);
      const first = taps.get(ids.join()) ?? tapAt;
      taps.set(ids.join(), first);
      const answer = await ask(to, init);
      if (answer.ok) sent.push({ ids, tapAt: first, savedAt: now() });
      return answer;
    };
    Object.assign((globalThis as unknown as InHall).hall, { sent });
  });
}

/** The counts above a station, whenever others were painted. */
function watchCounts(page: Page): Promise<void> {
  return page.evaluate(() => {
    const shown: Shown[] = [];
    const counts = () => {
      const text = document.querySelector('ul[aria-label="Progress at this station"]')?.textContent ?? "";
      return /(\d+) done(\d+) still to come/.exec(text);
    };
    let last = "";
    const frameOver = new MessageChannel();
    frameOver.port1.onmessage = ({ data: [, done, later] }: MessageEvent<string[]>) =>
      shown.push({
        done: Number(done),
        later: Number(later),
        at: performance.timeOrigin + performance.now(),
      });
    const look = () => {
      const now = counts();
      if (now === null || now[0] === last) return;
      last = now[0];
      // The callback of a frame runs before it is painted, the message after it.
      requestAnimationFrame(() => frameOver.port2.postMessage([...now]));
    };
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    look();
    Object.assign((globalThis as unknown as InHall).hall, { shown });
  });
}

/**
 * Lets the page be typed in: its own fields hear the same events as from a keyboard, so that everything from the key to
 * the table is the page's own. Waits for the athlete, and until the form is free again.
 */
function giveHands(page: Page): Promise<void> {
  return page.evaluate(() => {
    const form = () => document.querySelector('section[aria-label="Enter a result"]') ?? document.body;
    const field = (name: string) =>
      [...form().querySelectorAll("label")].find(({ textContent }) => textContent?.startsWith(name))
        ?.control as HTMLInputElement | null | undefined;
    const tick = (ms = 0) => new Promise((resolve) => setTimeout(resolve, ms));
    async function until(look: () => unknown, what: string, limitMs = 60_000): Promise<void> {
      const end = performance.now() + limitMs;
      for (; !look(); await tick(20)) {
        if (performance.now() > end) throw new Error(`No ${what}: ${form().textContent}`);
      }
    }
    async function write(input: HTMLInputElement, text: string) {
      Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set?.call(input, text);
      input.dispatchEvent(new Event("input", { bubbles: true }));
      await tick();
    }
    async function enterAt(input: HTMLInputElement) {
      input.focus();
      const key = { key: "Enter", code: "Enter", bubbles: true, cancelable: true };
      input.dispatchEvent(new KeyboardEvent("keydown", key));
      input.dispatchEvent(new KeyboardEvent("keyup", key));
      await tick();
    }
    async function enter({ bib, fields }: TypedEntry) {
      const box = field("Bib");
      if (!box) throw new Error("There is no entry here.");
      await write(box, `${bib}`);
      const isThere = () => field(fields[0]?.[0] ?? "");
      // As people do where no reply comes in time; the page itself waits for eight seconds.
      for (let tries = 0; tries < 8 && !isThere(); tries += 1) {
        await enterAt(box);
        await until(isThere, "athlete", 9_000).catch(() => undefined);
      }
      for (const [name, typed] of fields) {
        const input = field(name);
        if (!input) throw new Error(`There is no ${name}: ${form().textContent}`);
        await write(input, typed);
      }
      // An empty field for a further touch ends the entry.
      for (const name of [...fields.map(([each]) => each), "Touch 2"]) {
        const input = field(name);
        if (input) await enterAt(input);
      }
      await until(() => form().querySelector("fieldset") === null, "saved entry");
    }
    Object.assign((globalThis as unknown as InHall).hall, { enter });
  });
}

export function enterAt(page: Page, entry: TypedEntry): Promise<void> {
  return page.evaluate((one) => (globalThis as unknown as InHall).hall.enter(one), entry);
}

export function sentBy(page: Page): Promise<readonly Sent[]> {
  return page.evaluate(() => (globalThis as unknown as InHall).hall.sent);
}

export function shownBy(page: Page): Promise<readonly Shown[]> {
  return page.evaluate(() => (globalThis as unknown as InHall).hall.shown);
}

export function askedBy(page: Page): Promise<Asked> {
  return page.evaluate(() => (globalThis as unknown as InHall).hall.asked);
}
