import type endurance from "../../../resources/locales/en/endurance.json";

declare module "../../words/word-files.ts" {
  interface WordFiles {
    endurance: typeof endurance;
  }
}
