import { Component, type ReactNode, useEffect } from "react";
import { useTranslation } from "react-i18next";
import { useReady } from "../app/ready.ts";
import { Button } from "../parts/controls/Button.tsx";
import { Stack } from "../parts/flow/Stack.tsx";
import css from "./ScreenFault.module.css";

interface ScreenFaultProps {
  readonly children: ReactNode;
  /** True for a big screen: nobody is there to press a button, so that it shows itself again. */
  readonly alone: boolean;
}

/** Says, in place of a screen that has failed, what is saved and how it comes back: an empty page says neither. */
export class ScreenFault extends Component<ScreenFaultProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override render(): ReactNode {
    return this.state.failed ? <Failed alone={this.props.alone} /> : this.props.children;
  }
}

/** Ms until a big screen shows itself again: no faster, if it fails each time. */
const againMs = 10_000;

function Failed({ alone }: Pick<ScreenFaultProps, "alone">) {
  const { t } = useTranslation("common");
  useReady(true);
  useEffect(() => {
    if (!alone) return;
    const timer = setTimeout(() => location.reload(), againMs);
    return () => clearTimeout(timer);
  }, [alone]);
  return (
    <Stack as="main" gap={4} className={css.page}>
      <h1>{t("stopped.title")}</h1>
      {!alone && <p>{t("stopped.what")}</p>}
      {!alone && (
        <p>
          <Button kind="primary" onPress={() => location.reload()} autoFocus>
            {t("stopped.again")}
          </Button>
        </p>
      )}
    </Stack>
  );
}
