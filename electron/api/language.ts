import { languageChoiceSchema } from "../domain/languages.ts";
import { allow, router } from "./door/trpc.ts";

/** What the desk speaks, and its board and papers with it. */
export const language = router({
  current: allow("board", "organiser", "station", "check-in", "locked")
    .output(languageChoiceSchema)
    .query(({ ctx: { desk } }) => ({ language: desk.language })),

  /** Kept on this computer, beside the stores; every window follows at once. */
  choose: allow("organiser", "station", "check-in")
    .input(languageChoiceSchema)
    .mutation(({ ctx: { desk }, input }) => desk.chooseLanguage(input.language)),
});
