import { useState } from "react";
import { useTranslation } from "react-i18next";
import { splitInvitation } from "../../../electron/domain/devices/invitation.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { type AskedTable, askTable } from "./asking.ts";
import css from "./Join.module.css";
import { useOutcomeWords } from "./outcomeWords.ts";

interface AskTableFormProps {
  /** Why an earlier try came to nothing. */
  readonly refused: "no" | "gone" | null;
  readonly onAsked: (ask: string, name: string) => void;
}

const example = "192.168.1.7:8443";
const nothing = { address: "", code: "", key: "", name: "" };

/** The address, the code and the key from the organiser's screen, and a name by which the organiser knows this laptop. */
export function AskTableForm({ refused, onAsked }: AskTableFormProps) {
  const { t } = useTranslation(["atTable", "join"]);
  const [typed, setTyped] = useState(nothing);
  const [asked, setAsked] = useState<AskedTable | null>(null);
  const [busy, setBusy] = useState(false);
  const say = useOutcomeWords(example);
  const told = asked === null ? null : say(asked);
  const set = (change: Partial<typeof nothing>) => setTyped({ ...typed, ...change });
  const isFull = Object.values(typed).every((text) => text.trim() !== "");
  async function go(): Promise<void> {
    if (busy || !isFull) return;
    setBusy(true);
    const came = await askTable(typed);
    setBusy(false);
    setAsked(came);
    if (came.outcome === "asked") onAsked(came.ask, typed.name.trim());
  }
  const fieldOf = asked === null ? null : fieldsOf[asked.outcome];
  const errorAt = (field: keyof typeof nothing) => (fieldOf === field ? told : null);
  return (
    <Form className={css.tableForm} onSubmit={() => void go()}>
      <p className={css.whole}>{t("where")}</p>
      <TextField
        label={t("address")}
        help={t("addressHelp", { example })}
        value={typed.address}
        onChange={(address) => set(splitInvitation(address) ?? { address })}
        error={errorAt("address")}
        maxLength={100}
        required
        autoFocus
      />
      <TextField
        label={t("code")}
        help={t("codeHelp")}
        value={typed.code}
        onChange={(code) => set({ code })}
        error={errorAt("code")}
        maxLength={20}
        required
      />
      <TextField
        label={t("key")}
        help={t("keyHelp")}
        value={typed.key}
        onChange={(key) => set({ key })}
        error={errorAt("key")}
        maxLength={40}
        required
      />
      <TextField
        label={t("name")}
        help={t("nameHelp")}
        value={typed.name}
        onChange={(name) => set({ name })}
        maxLength={40}
        required
      />
      {refused !== null && asked === null && (
        <p role="alert" className={css.whole}>
          {t(`join:refused.${refused}`)}
        </p>
      )}
      {fieldOf === null && told !== null && (
        <p role="alert" className={`strong ${css.whole} ${css.trouble}`}>
          {told}
        </p>
      )}
      <p className={`quiet measure ${css.whole}`}>{t("what")}</p>
      <div className={css.whole}>
        <Button type="submit" kind="primary" size="large" busy={busy} disabled={!isFull}>
          {t("do")}
        </Button>
      </div>
    </Form>
  );
}

/** The field at which an outcome is said; null for one that is of none, or of all. */
const fieldsOf: Readonly<Record<AskedTable["outcome"], keyof typeof nothing | null>> = {
  ...{ badAddress: "address", badCode: "code", wrong: "code", closed: "code", badKey: "key" },
  ...{ otherKey: "key", asked: null, shut: null, full: null, unreadable: null, away: null, notHere: null },
};
