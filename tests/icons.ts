import { mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { projectFolder } from "../electron/runtime/host.ts";
import { closeApp, launchApp, pageOf, prepareStage } from "./e2e/launch.ts";

/** `npm run icons`: the drawing `tapeline.svg`, as the desk's own page draws it, in the forms that systems ask for. */
const folder = join(projectFolder, "resources", "icons");
const sizes = [16, 32, 48, 64, 128, 256, 512];
/** The kinds of an .icns file that hold a PNG, by its side in pixels. */
const icnsKinds: Readonly<Record<number, string>> = { 128: "ic07", 256: "ic08", 512: "ic09" };

async function makeIcons(desk: Page): Promise<void> {
  const svg = await readFile(join(folder, "tapeline.svg"), "base64");
  const pictures = new Map<number, Buffer>();
  await mkdir(join(folder, "linux"), { recursive: true });
  for (const size of sizes) {
    const picture = Buffer.from(await drawn(desk, svg, size), "base64");
    pictures.set(size, picture);
    await writeFile(join(folder, "linux", `${size}x${size}.png`), picture);
  }
  await writeFile(join(folder, "tapeline.ico"), ico([...pictures].filter(([size]) => size <= 256)));
  await writeFile(join(folder, "tapeline.icns"), icns([...pictures].filter(([size]) => size in icnsKinds)));
}

/** The drawing as a PNG of `size` by `size` pixels, in base64. */
function drawn(desk: Page, svg: string, size: number): Promise<string> {
  return desk.evaluate(
    async ([source, side]) => {
      const image = Object.assign(new Image(side, side), { src: `data:image/svg+xml;base64,${source}` });
      await image.decode();
      const canvas = Object.assign(document.createElement("canvas"), { width: side, height: side });
      canvas.getContext("2d")?.drawImage(image, 0, 0, side, side);
      return canvas.toDataURL("image/png").replace(/^.*,/, "");
    },
    [svg, size] as const,
  );
}

type Picture = readonly [size: number, png: Buffer];

/** Windows' format: a list of pictures with their places, then the pictures. PNG is read since Windows Vista. */
function ico(pictures: readonly Picture[]): Buffer {
  const head = Buffer.alloc(6 + 16 * pictures.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(pictures.length, 4);
  let place = head.length;
  for (const [index, [size, png]] of pictures.entries()) {
    const entry = 6 + 16 * index;
    // A side of 256 is written as 0.
    head.writeUInt8(size % 256, entry);
    head.writeUInt8(size % 256, entry + 1);
    head.writeUInt16LE(1, entry + 4);
    head.writeUInt16LE(32, entry + 6);
    head.writeUInt32LE(png.length, entry + 8);
    head.writeUInt32LE(place, entry + 12);
    place += png.length;
  }
  return Buffer.concat([head, ...pictures.map(([, png]) => png)]);
}

/** Apple's format: blocks of a kind, a length that counts its own eight bytes, and a picture. */
function icns(pictures: readonly Picture[]): Buffer {
  const blocks = pictures.map(([size, png]) => block(icnsKinds[size] ?? "", png));
  return block("icns", Buffer.concat(blocks));
}

function block(kind: string, content: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(kind, "latin1");
  head.writeUInt32BE(8 + content.length, 4);
  return Buffer.concat([head, content]);
}

const stage = await prepareStage();
const data = await mkdtemp(join(tmpdir(), "tapeline-icons-"));
const launched = await launchApp(stage, data);
try {
  await makeIcons(await pageOf(launched.app, "desk"));
} finally {
  await closeApp(launched);
  await stage.display.stop();
  await rm(data, { recursive: true, force: true });
}
