import { readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { allPictures } from "./take.ts";

/** What stands over each group of pictures, by the first part of their names. */
const groups = {
  demo: "The demonstration, in the middle of its day",
  live: "Tests run live",
  hand: "Devices at the stations",
  full: "200 athletes, long names among them",
  three: "Three athletes",
  empty: "Nothing yet",
  plan: "What is planned for a day",
  planned: "Before the day opens",
  "at-hand": "A day at hand",
  closed: "After the day",
  tables: "With a reference table, 200 athletes",
  asked: "What is asked back",
  spanish: "In Spanish",
  fault: "Something is wrong",
  question: "Before what can't be taken back",
  paper: "On paper",
} as const;

/** Writes `index.html` beside the pictures: all of them on one page, to be looked through. */
export async function writeContactSheet(): Promise<number> {
  const names = (await readdir(allPictures)).filter((name) => name.endsWith(".png")).sort();
  const sections = Object.entries(groups).map(([prefix, title]) => {
    const own = names.filter((name) => name.startsWith(`${prefix}-`));
    return `<h2>${title} (${own.length})</h2>\n<div>\n${own.map(figure).join("\n")}\n</div>`;
  });
  const stray = names.filter((name) => !Object.keys(groups).some((prefix) => name.startsWith(`${prefix}-`)));
  if (stray.length > 0) throw new Error(`These pictures belong to no group: ${stray.join(", ")}.`);
  await writeFile(join(allPictures, "index.html"), page(sections.join("\n"), names.length));
  return names.length;
}

function figure(name: string): string {
  const title = name.replace(/\.png$/, "").replaceAll("-", " ");
  const image = `<img src="${name}" alt="${title}" loading="lazy">`;
  return `<figure><a href="${name}">${image}</a><figcaption>${title}</figcaption></figure>`;
}

function page(body: string, count: number): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<title>Tapeline in ${count} pictures</title>
<style>
body { margin: 2rem; background: #f1e4ca; color: #1b2328; font: 1rem/1.4 system-ui, sans-serif }
div { display: grid; grid-template-columns: repeat(auto-fill, minmax(24rem, 1fr)); gap: 1.5rem }
figure { margin: 0 }
img { width: 100%; height: 15rem; object-fit: contain; object-position: 0 0; background: #fdf9f1 }
</style>
<h1>Tapeline in ${count} pictures</h1>
${body}
</html>
`;
}
