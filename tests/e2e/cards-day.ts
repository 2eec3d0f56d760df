import { randomUUID } from "node:crypto";
import type { ElectronApplication, Page } from "@playwright/test";
import type { CardPeople } from "../../electron/api/cards/people.ts";
import { callDoor } from "./page.ts";

/** Who has a card, as the screen reads it. */
export async function peopleWithCards(
  desk: Page,
): Promise<CardPeople & { readonly day: NonNullable<CardPeople["day"]> }> {
  const told = (await desk.evaluate(async () => {
    const response = await fetch("/trpc/cards.people");
    return (await response.json()).result.data;
  })) as CardPeople;
  if (told.day === null) throw new Error("There is no day.");
  return { ...told, day: told.day };
}

/** An athlete with all that takes room: the longest names, four digits, push-ups both ways, a circuit not finished. */
export async function addLongestNamed(desk: Page): Promise<number> {
  const { athleteId } = (await callDoor(desk, "checkIn.walkUp", {
    league: "Zenith and Everlasting Overlap Rollers of the Upper Quarry Lane and Harbour Dist",
    name: "Wilhelmina Constance Featherstone the Unstoppable of the Upper Tarn and Millrace",
    number: "0000",
    ...{
      birthYear: 1995,
      bib: null,
      leaveOut: [],
      board: "name",
      share: true,
      guardianConsent: false,
      by: "QA",
    },
  })) as { athleteId: number };
  const enter = (test: string, variant: string, ...seen: object[]) => {
    const attempts = seen.map((each) => ({ id: randomUUID(), seen: each }));
    return callDoor(desk, "station.enter", { athleteId, test, variant, attempts, by: "QA", sure: true });
  };
  await enter("push-up", "full", { how: "tally", reps: 24, offAtEnd: 0 });
  await enter("push-up", "knee", { how: "tally", reps: 31, offAtEnd: 0 });
  const laps = { laps: 7, touches: 0 };
  await enter(
    "agility",
    "",
    { direction: "cw", extra: 3, ...laps, touches: 1 },
    { direction: "ccw", extra: 1, ...laps },
  );
  await enter("vertical", "", { standingReach: 2190, touchReach: 2617 });
  await enter("core", "", { held: 729_000 });
  await enter("endurance", "", { finished: false, roundsDone: 2, repsDone: 35 });
  return athleteId;
}

/** Answers the next questions where to save with a path. */
export async function answerSave(app: ElectronApplication, filePath: string): Promise<void> {
  await app.evaluate(({ dialog }, path) => {
    Object.assign(dialog, {
      showSaveDialog: async (_window: unknown, options: { defaultPath?: string }) => {
        Object.assign(globalThis, { askedFor: options.defaultPath });
        return { canceled: false, filePath: path };
      },
    });
  }, filePath);
}

/** Stands for the person at the system's print dialog, and keeps what the dialog was opened for. */
export async function answerPrint(app: ElectronApplication, printed: boolean, reason: string): Promise<void> {
  await app.evaluate(
    ({ app: main }, [success, why]) => {
      main.once("browser-window-created", (_event, { webContents: contents }) => {
        contents.print = (options, answered) => {
          Object.assign(globalThis, { printed: { url: contents.getURL(), options } });
          answered?.(success, why);
        };
      });
    },
    [printed, reason] as const,
  );
}

/** The next page that is laid out never says that it is ready, so that on no machine its job ends by itself. */
export async function holdUpNextPage(app: ElectronApplication): Promise<void> {
  await app.evaluate(({ app: main }) => {
    main.once("browser-window-created", (_event, { webContents: contents }) => {
      const ask = contents.executeJavaScript.bind(contents);
      contents.executeJavaScript = async (script) => ({ ...(await ask(script)), ready: false });
    });
  });
}

/** Lets the next window that is made lose its page as soon as that is there. */
export async function crashNextPage(app: ElectronApplication): Promise<void> {
  await app.evaluate(({ app: main }) => {
    main.once("browser-window-created", (_event, { webContents: contents }) => {
      contents.once("did-finish-load", () => contents.forcefullyCrashRenderer());
    });
  });
}

/** Returns what says how often a page was laid out since it began. */
export async function layoutCount(desk: Page): Promise<() => Promise<number>> {
  const session = await desk.context().newCDPSession(desk);
  await session.send("Performance.enable");
  return async () => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "LayoutCount")?.value ?? Number.NaN;
  };
}
