import type pushUp from "../../../resources/locales/en/push-up.json";

declare module "../../words/word-files.ts" {
  interface WordFiles {
    "push-up": typeof pushUp;
  }
}
