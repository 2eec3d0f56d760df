import type agility from "../../../resources/locales/en/agility.json";

declare module "../../words/word-files.ts" {
  interface WordFiles {
    agility: typeof agility;
  }
}
