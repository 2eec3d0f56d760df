import { trustNothing } from "../../../renderer/app/trusted.ts";
import { soundNames } from "../../../renderer/sound/voices.ts";
import { countTicksHidden, type Minute, type Quiet, runMinute } from "./minute.ts";
import { type RenderedSound, renderCancelled, renderSound } from "./render.ts";

/** What the page can be asked to do, and what comes of it. */
export interface Tasks {
  /** Every sound, and the largest sample of sounds that were taken back. */
  readonly sounds: { readonly sounds: readonly RenderedSound[]; readonly takenBack: number };
  readonly minute: Minute;
  readonly quiet: Quiet;
}

const tasks: { readonly [Task in keyof Tasks]: () => Promise<Tasks[Task]> } = {
  async sounds() {
    const sounds: RenderedSound[] = [];
    for (const name of soundNames) sounds.push(await renderSound(name));
    return { sounds, takenBack: await renderCancelled() };
  },
  minute: () => runMinute(40, 60),
  quiet: countTicksHidden,
};

// As the program's own pages do, under the same content policy.
trustNothing();
const task = location.hash.slice(1) as keyof Tasks;
await fetch("/done", { method: "POST", body: JSON.stringify(await tasks[task]()) });
