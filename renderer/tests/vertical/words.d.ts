import type vertical from "../../../resources/locales/en/vertical.json";

declare module "../../words/word-files.ts" {
  interface WordFiles {
    vertical: typeof vertical;
  }
}
