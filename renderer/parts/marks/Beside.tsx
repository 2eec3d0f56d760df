import type { Sentence } from "../../../electron/domain/words.ts";
import { useSay } from "../../words/say.ts";
import { asSentence } from "../sheets/sheet.ts";

interface BesideProps {
  /** In what a mark was made otherwise than the one that it is compared with. */
  readonly beside: readonly { readonly key: string; readonly values?: Sentence["values"] | undefined }[];
}

/** Says, beside a change, in what the two marks were made otherwise; nothing where they were made alike. */
export function Beside({ beside }: BesideProps) {
  const say = useSay();
  if (beside.length === 0) return null;
  return <p className="small quiet">{beside.map((each) => say(asSentence(each))).join(" ")}</p>;
}
