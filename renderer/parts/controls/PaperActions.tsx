import { useTranslation } from "react-i18next";
import { type Paper, type PaperScreen, papers, usePaperwork } from "../../app/saving.ts";
import { Button } from "./Button.tsx";
import { Choice } from "./Choice.tsx";

interface PaperActionsProps {
  /** Whose words tell what came of it. */
  readonly screen: PaperScreen;
  /** Where the page is laid out, without its paper. */
  readonly path: string;
  readonly paper: Paper;
  readonly onPaper: (paper: Paper) => void;
  /** The name that is suggested for the file. */
  readonly fileName: string;
  /** What the buttons say, where they say more than usual. */
  readonly save?: string;
  readonly print?: string;
  /** True where printing is what people come to the screen for. */
  readonly printsFirst?: boolean;
}

/** Selects the size of the paper, and saves a page as a PDF or prints it. */
export function PaperActions(props: PaperActionsProps) {
  const { screen, path, paper, onPaper, fileName, printsFirst = false } = props;
  const { t } = useTranslation("common");
  const work = usePaperwork(screen, { path, paper, suggestedName: fileName });
  const { save = t("paper.save"), print = t("paper.print") } = props;
  return (
    <>
      <Choice
        label={t("paper.label")}
        hideLabel
        options={papers.map((each) => ({ value: each, label: t(`paper.${each}`) }))}
        value={paper}
        onChange={onPaper}
      />
      <PaperWays {...{ work, save, print, printsFirst }} />
    </>
  );
}

interface PaperWaysProps {
  readonly work: { readonly busy: boolean; readonly save: () => void; readonly print: () => void };
  readonly save: string;
  readonly print: string;
  readonly printsFirst: boolean;
}

/** Saves pages as a PDF or prints them. */
export function PaperWays({ work: { busy, ...work }, save, print, printsFirst }: PaperWaysProps) {
  return (
    <>
      <Button busy={busy} onPress={work.save}>
        {save}
      </Button>
      <Button {...(printsFirst && { kind: "primary" })} busy={busy} onPress={work.print}>
        {print}
      </Button>
    </>
  );
}
