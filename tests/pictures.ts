/**
 * `npm run pictures`: starts the built app on the demo day and on small and large days of its own, and takes a picture
 * of every screen in every state. All of them go to out/pictures, with a page that shows them all (`index.html`); those
 * that the README shows go to resources/pictures, to be committed. With names of parts (`-- demo full`) only these.
 */
import { mkdir, rm } from "node:fs/promises";
import { prepareStage } from "./e2e/launch.ts";
import { type Studio, withApp } from "./pictures/app.ts";
import { takeAsked, takeWhoIsWho } from "./pictures/asked.ts";
import { writeContactSheet } from "./pictures/contact-sheet.ts";
import { takeDemo } from "./pictures/demo.ts";
import { takeDeviceScreens } from "./pictures/device-screens.ts";
import { takeDevices } from "./pictures/devices.ts";
import { takeEmpty, takeThree } from "./pictures/empty.ts";
import { spoilFolder, takeFaults, takeRefusedStore } from "./pictures/faults.ts";
import { fillFolder, takeFull } from "./pictures/full.ts";
import { keepForReadme } from "./pictures/in-readme.ts";
import { takeLive } from "./pictures/live.ts";
import { takePlans } from "./pictures/plan.ts";
import { takeTables } from "./pictures/tables.ts";
import { allPictures } from "./pictures/take.ts";

interface Part {
  readonly take: (studio: Studio) => Promise<void>;
  /** Fills the data folder before the app starts. */
  readonly prepare?: (folder: string) => Promise<void>;
}

const parts: Readonly<Record<string, Part>> = {
  empty: { take: takeEmpty },
  three: { take: takeThree },
  demo: { take: takeDemo },
  devices: { take: takeDevices },
  hand: { take: takeDeviceScreens },
  live: { take: takeLive },
  plan: { take: takePlans },
  full: { take: takeFull, prepare: fillFolder },
  tables: { take: takeTables, prepare: fillFolder },
  asked: { take: takeAsked },
  who: { take: takeWhoIsWho },
  faults: { take: takeFaults },
  store: { take: takeRefusedStore, prepare: spoilFolder },
};

const wanted = process.argv.slice(2);
const unknown = wanted.find((name) => !Object.hasOwn(parts, name));
if (unknown !== undefined) throw new Error(`There is no part ${unknown}: ${Object.keys(parts).join(", ")}.`);

const stage = await prepareStage();
if (wanted.length === 0) await rm(allPictures, { recursive: true, force: true });
await mkdir(allPictures, { recursive: true });
try {
  for (const [name, { take, prepare }] of Object.entries(parts)) {
    if (wanted.length === 0 || wanted.includes(name)) await withApp(stage, take, prepare);
  }
} finally {
  await stage.display.stop();
}
console.log(`${await writeContactSheet()} pictures, all of them in ${allPictures}/index.html`);
if (wanted.length === 0) await keepForReadme();
