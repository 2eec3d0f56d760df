import type athletes from "../../resources/locales/en/athletes.json";
import type atTable from "../../resources/locales/en/atTable.json";
import type backups from "../../resources/locales/en/backups.json";
import type board from "../../resources/locales/en/board.json";
import type bundle from "../../resources/locales/en/bundle.json";
import type cards from "../../resources/locales/en/cards.json";
import type cautions from "../../resources/locales/en/cautions.json";
import type checkIn from "../../resources/locales/en/checkIn.json";
import type common from "../../resources/locales/en/common.json";
import type day from "../../resources/locales/en/day.json";
import type devices from "../../resources/locales/en/devices.json";
import type held from "../../resources/locales/en/held.json";
import type home from "../../resources/locales/en/home.json";
import type instructions from "../../resources/locales/en/instructions.json";
import type join from "../../resources/locales/en/join.json";
import type live from "../../resources/locales/en/live.json";
import type lock from "../../resources/locales/en/lock.json";
import type noise from "../../resources/locales/en/noise.json";
import type papers from "../../resources/locales/en/papers.json";
import type place from "../../resources/locales/en/place.json";
import type planning from "../../resources/locales/en/planning.json";
import type plots from "../../resources/locales/en/plots.json";
import type reference from "../../resources/locales/en/reference.json";
import type rehearsal from "../../resources/locales/en/rehearsal.json";
import type report from "../../resources/locales/en/report.json";
import type sentences from "../../resources/locales/en/sentences.json";
import type sheets from "../../resources/locales/en/sheets.json";
import type station from "../../resources/locales/en/station.json";
import type steps from "../../resources/locales/en/steps.json";
import type summary from "../../resources/locales/en/summary.json";

/**
 * The English word files by name, so that every key of `t()` is checked: one line for each file. Each test adds its own
 * from its folder (`renderer/tests/<code>/words.d.ts`).
 */
export interface WordFiles {
  athletes: typeof athletes;
  atTable: typeof atTable;
  backups: typeof backups;
  board: typeof board;
  bundle: typeof bundle;
  cards: typeof cards;
  cautions: typeof cautions;
  checkIn: typeof checkIn;
  common: typeof common;
  day: typeof day;
  devices: typeof devices;
  held: typeof held;
  home: typeof home;
  instructions: typeof instructions;
  live: typeof live;
  join: typeof join;
  lock: typeof lock;
  noise: typeof noise;
  papers: typeof papers;
  place: typeof place;
  planning: typeof planning;
  plots: typeof plots;
  reference: typeof reference;
  rehearsal: typeof rehearsal;
  report: typeof report;
  sentences: typeof sentences;
  sheets: typeof sheets;
  station: typeof station;
  steps: typeof steps;
  summary: typeof summary;
}
