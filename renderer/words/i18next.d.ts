import type athletes from "../../resources/locales/en/athletes.json";
import type backups from "../../resources/locales/en/backups.json";
import type board from "../../resources/locales/en/board.json";
import type bundle from "../../resources/locales/en/bundle.json";
import type cards from "../../resources/locales/en/cards.json";
import type cautions from "../../resources/locales/en/cautions.json";
import type checkIn from "../../resources/locales/en/checkIn.json";
import type common from "../../resources/locales/en/common.json";
import type day from "../../resources/locales/en/day.json";
import type held from "../../resources/locales/en/held.json";
import type home from "../../resources/locales/en/home.json";
import type instructions from "../../resources/locales/en/instructions.json";
import type live from "../../resources/locales/en/live.json";
import type liveAgility from "../../resources/locales/en/liveAgility.json";
import type liveCircuit from "../../resources/locales/en/liveCircuit.json";
import type liveCore from "../../resources/locales/en/liveCore.json";
import type liveLeap from "../../resources/locales/en/liveLeap.json";
import type livePushUp from "../../resources/locales/en/livePushUp.json";
import type lock from "../../resources/locales/en/lock.json";
import type noise from "../../resources/locales/en/noise.json";
import type place from "../../resources/locales/en/place.json";
import type plots from "../../resources/locales/en/plots.json";
import type reference from "../../resources/locales/en/reference.json";
import type rehearsal from "../../resources/locales/en/rehearsal.json";
import type report from "../../resources/locales/en/report.json";
import type sentences from "../../resources/locales/en/sentences.json";
import type sheets from "../../resources/locales/en/sheets.json";
import type station from "../../resources/locales/en/station.json";
import type summary from "../../resources/locales/en/summary.json";
import "i18next";

/** Makes every key of `t()` checked against the English word files: one line here for each file. */
declare module "i18next" {
  interface CustomTypeOptions {
    defaultNS: "common";
    resources: {
      athletes: typeof athletes;
      backups: typeof backups;
      board: typeof board;
      bundle: typeof bundle;
      cards: typeof cards;
      cautions: typeof cautions;
      checkIn: typeof checkIn;
      common: typeof common;
      day: typeof day;
      held: typeof held;
      home: typeof home;
      instructions: typeof instructions;
      live: typeof live;
      liveAgility: typeof liveAgility;
      liveCircuit: typeof liveCircuit;
      liveCore: typeof liveCore;
      livePushUp: typeof livePushUp;
      liveLeap: typeof liveLeap;
      lock: typeof lock;
      noise: typeof noise;
      place: typeof place;
      plots: typeof plots;
      reference: typeof reference;
      report: typeof report;
      rehearsal: typeof rehearsal;
      sentences: typeof sentences;
      sheets: typeof sheets;
      station: typeof station;
      summary: typeof summary;
    };
  }
}
