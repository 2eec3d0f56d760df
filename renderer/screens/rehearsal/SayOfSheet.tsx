import { useTranslation } from "react-i18next";
import { Choices } from "../../parts/sheets/Choices.tsx";
import type { Kind } from "../../parts/sheets/sheet.ts";
import type { Unread } from "./rehearsed.ts";
import type { Rehearsal } from "./useRehearsal.ts";

interface SayOfSheetProps {
  readonly kind: Kind;
  readonly unread: Unread;
  readonly rehearsal: Rehearsal;
}

/** What can be said of one sheet as a whole, as under Import; each answer rehearses again. */
export function SayOfSheet({ kind, unread: { file, form }, rehearsal }: SayOfSheetProps) {
  const { t } = useTranslation(["rehearsal", "sheets"]);
  const said = rehearsal.choice[kind].find(({ name }) => name === file)?.said;
  if (said === undefined) return null;
  const title = t("sheet.say", { kind: t(`sheets:kind.${kind}`), file });
  return <Choices title={title} form={form} said={said} onSay={(more) => rehearsal.say(kind, file, more)} />;
}
