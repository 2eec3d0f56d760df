import { useEffect, useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Form } from "../../parts/flow/Form.tsx";
import { type Asked, askToJoin } from "./asking.ts";
import css from "./Join.module.css";

interface AskFormProps {
  /** Why an earlier try came to nothing. */
  readonly refused: "no" | "gone" | null;
  readonly onAsked: (ask: string, name: string) => void;
}

/** The code that a QR code brought along, after `#`; it is taken out of the address, where it would stay. */
function codeInAddress(): string {
  const code = decodeURIComponent(location.hash.slice(1));
  if (code !== "") history.replaceState(null, "", location.pathname);
  return /^[0-9A-Z]{8}$/.test(code) ? `${code.slice(0, 4)} ${code.slice(4)}` : "";
}

/** The code from the organiser's screen, and a name by which the organiser knows the device. */
export function AskForm({ refused, onAsked }: AskFormProps) {
  const { t } = useTranslation("join");
  const [code, setCode] = useState(codeInAddress);
  const [name, setName] = useState("");
  const [asked, setAsked] = useState<Asked | null>(null);
  const [busy, setBusy] = useState(false);
  useEffect(() => {
    // A code that is scanned while this page is there changes the address alone, and loads nothing.
    const take = () => setCode((before) => codeInAddress() || before);
    window.addEventListener("hashchange", take);
    return () => window.removeEventListener("hashchange", take);
  }, []);
  async function go(): Promise<void> {
    if (busy) return;
    setBusy(true);
    const came = await askToJoin(code, name);
    setBusy(false);
    setAsked(came);
    if (came.outcome === "asked") onAsked(came.ask, name.trim());
  }
  const isOfCode = asked?.outcome === "wrong" || asked?.outcome === "closed";
  const told =
    asked === null || asked.outcome === "asked" ? null : t(`trouble.${asked.outcome}`, secondsOf(asked));
  return (
    <Form gap={5} onSubmit={() => void go()}>
      {refused !== null && asked === null && <p role="alert">{t(`refused.${refused}`)}</p>}
      <TextField
        label={t("code")}
        help={t("codeHelp")}
        size="huge"
        value={code}
        onChange={setCode}
        maxLength={20}
        required
        error={isOfCode ? told : null}
      />
      <TextField
        label={t("name")}
        help={t("nameHelp")}
        value={name}
        onChange={setName}
        maxLength={40}
        required
      />
      {!isOfCode && told !== null && (
        <p role="alert" className={`strong ${css.trouble}`}>
          {told}
        </p>
      )}
      <Button
        type="submit"
        kind="primary"
        size="large"
        busy={busy}
        disabled={code.trim() === "" || name.trim() === ""}
      >
        {t("do")}
      </Button>
      <p className="quiet">{t("what")}</p>
    </Form>
  );
}

function secondsOf(asked: Asked): { readonly count: number } {
  return { count: asked.outcome === "shut" ? Math.ceil(asked.waitMs / 1_000) : 0 };
}
