/**
 * The English word files by name, so that every key of `t()` is checked: one line for each. Every test adds its own
 * from its folder (`renderer/tests/<code>/words.d.ts`).
 */
export interface WordFiles {
  athletes: typeof import("../../resources/locales/en/athletes.json");
  atTable: typeof import("../../resources/locales/en/atTable.json");
  backups: typeof import("../../resources/locales/en/backups.json");
  board: typeof import("../../resources/locales/en/board.json");
  bundle: typeof import("../../resources/locales/en/bundle.json");
  cards: typeof import("../../resources/locales/en/cards.json");
  cautions: typeof import("../../resources/locales/en/cautions.json");
  checkIn: typeof import("../../resources/locales/en/checkIn.json");
  common: typeof import("../../resources/locales/en/common.json");
  day: typeof import("../../resources/locales/en/day.json");
  devices: typeof import("../../resources/locales/en/devices.json");
  held: typeof import("../../resources/locales/en/held.json");
  home: typeof import("../../resources/locales/en/home.json");
  instructions: typeof import("../../resources/locales/en/instructions.json");
  live: typeof import("../../resources/locales/en/live.json");
  join: typeof import("../../resources/locales/en/join.json");
  lock: typeof import("../../resources/locales/en/lock.json");
  noise: typeof import("../../resources/locales/en/noise.json");
  page: typeof import("../../resources/locales/en/page.json");
  papers: typeof import("../../resources/locales/en/papers.json");
  place: typeof import("../../resources/locales/en/place.json");
  plan: typeof import("../../resources/locales/en/plan.json");
  planning: typeof import("../../resources/locales/en/planning.json");
  plots: typeof import("../../resources/locales/en/plots.json");
  reference: typeof import("../../resources/locales/en/reference.json");
  rehearsal: typeof import("../../resources/locales/en/rehearsal.json");
  report: typeof import("../../resources/locales/en/report.json");
  secondJudge: typeof import("../../resources/locales/en/secondJudge.json");
  sentences: typeof import("../../resources/locales/en/sentences.json");
  sheets: typeof import("../../resources/locales/en/sheets.json");
  station: typeof import("../../resources/locales/en/station.json");
  steps: typeof import("../../resources/locales/en/steps.json");
  study: typeof import("../../resources/locales/en/study.json");
  summary: typeof import("../../resources/locales/en/summary.json");
}
