import { Button } from "./Button.tsx";
import { Choice } from "./Choice.tsx";

interface PaperActionsProps<Paper extends string> {
  /** Names the choice for a screen reader; it is not shown. */
  readonly label: string;
  readonly options: readonly { readonly value: Paper; readonly label: string }[];
  readonly value: Paper;
  readonly onChange: (paper: Paper) => void;
  readonly work: { readonly busy: boolean; readonly save: () => void; readonly print: () => void };
  readonly save: string;
  readonly print: string;
  /** True where printing is what people come to the screen for. */
  readonly printsFirst?: boolean;
}

/** Selects the size of the paper, and saves it as a PDF or prints it. */
export function PaperActions<Paper extends string>(props: PaperActionsProps<Paper>) {
  const { label, options, value, onChange, work, save, print, printsFirst = false } = props;
  return (
    <>
      <Choice label={label} hideLabel options={options} value={value} onChange={onChange} />
      <Button busy={work.busy} onPress={work.save}>
        {save}
      </Button>
      <Button {...(printsFirst && { kind: "primary" })} busy={work.busy} onPress={work.print}>
        {print}
      </Button>
    </>
  );
}
