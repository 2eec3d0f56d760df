import { copyFile, mkdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { projectFolder } from "../../electron/runtime/host.ts";
import { picturePath } from "./take.ts";

const shown = join(projectFolder, "resources", "pictures");

/** The pictures of the README: what everybody in the hall sees, how a test is run, and the day of the organiser. */
const inReadme = ["demo-board-1", "live-core-1440", "demo-day"];
/** A picture in the repository may not be larger, in bytes. */
const largest = 250_000;

/** Copies the README's pictures to where they are committed. */
export async function keepForReadme(): Promise<void> {
  await mkdir(shown, { recursive: true });
  for (const name of inReadme) {
    const { size } = await stat(picturePath(name));
    if (size > largest) throw new Error(`${name}.png has ${size} bytes, more than ${largest}.`);
    await copyFile(picturePath(name), join(shown, `${name}.png`));
  }
}
