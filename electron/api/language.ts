import { languageChoiceSchema } from "../domain/languages.ts";
import { allow, router } from "./door/trpc.ts";

/** The language of the desk, its big screen and its papers. */
export const language = router({
  current: allow("board", "organiser", "station", "second-judge", "check-in", "locked")
    .output(languageChoiceSchema)
    .query(({ ctx: { desk } }) => ({ language: desk.language })),

  /** Stores the choice on this computer, beside the stores; every window follows at once. */
  choose: allow("organiser", "station", "check-in")
    .input(languageChoiceSchema)
    .mutation(({ ctx: { desk }, input }) => desk.chooseLanguage(input.language)),
});
