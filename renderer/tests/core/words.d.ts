import type core from "../../../resources/locales/en/core.json";

declare module "../../words/word-files.ts" {
  interface WordFiles {
    core: typeof core;
  }
}
