import { type BoardDay, boardDay } from "./board-day.ts";
import type { Invented } from "./people-of-a-day.ts";
import { hold, jump, reps, trial } from "./station-day.ts";

const firsts = [
  "Ash",
  "Briar",
  "Cinder",
  "Dell",
  "Ember",
  "Fern",
  "Gale",
  "Hazel",
  "Iris",
  "Juniper",
  "Kes",
  "Lark",
];
const lasts = [
  "Velvet",
  "Knox",
  "Rue",
  "Grant",
  "Tumble",
  "Marrow",
  "Pike",
  "Quill",
  "Sparrow",
  "Thorn",
  "Wick",
];
const leagues = ["Foundry Town", "Quarry Lane", "Harbour Rollers", "Millrace", "North Tarn"];

/** So many invented athletes: most by name, every third by bib, every tenth hidden; a few of the names are long. */
export function crowd(count: number): Invented[] {
  return Array.from({ length: count }, (_none, index) => {
    const short = `${firsts[index % firsts.length]} ${lasts[index % lasts.length]}`;
    const name = index % 9 === 4 ? `${short} of the Everlasting Overlap` : short;
    const board = index % 10 === 9 ? "hidden" : index % 3 === 2 ? "bib" : "name";
    return { league: leagues[index % leagues.length] ?? "", name, number: String(index), board };
  });
}

/** A day of so many athletes, each with two marks a test from before and all five tests done today. */
export async function crowdedDay(count: number, file?: string): Promise<BoardDay> {
  const day = await boardDay(crowd(count), file);
  for (let bib = 1; bib <= count; bib += 1) {
    for (const date of ["2026-01-10", "2026-04-11"]) pastOf(day, bib, date);
    await today(day, bib);
  }
  return day;
}

/** Every seventh has no mark from before. */
function pastOf(day: BoardDay, bib: number, date: string): void {
  if (bib % 7 === 0) return;
  day.past(bib, "push-up", 20, date);
  day.past(bib, "agility", 100, date);
  day.past(bib, "vertical", 8000, date);
  day.past(bib, "core", 95, date);
  day.past(bib, "endurance", 371_000, date);
}

async function today(day: BoardDay, bib: number): Promise<void> {
  await day.enter(bib, "push-up", reps(17 + (bib % 9)));
  await day.enter(bib, "agility", trial("cw", 6, bib % 4), trial("ccw", 6, bib % 3));
  await day.enter(bib, "vertical", jump(2100, 2490 + 5 * (bib % 11)));
  await day.enter(bib, "core", hold(80 + 3 * (bib % 30)));
  await day.enter(bib, "endurance", { finished: true, time: 365_000 + 100 * ((bib * 37) % 160) });
}
