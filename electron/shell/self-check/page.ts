import type { WebContents } from "electron";

/** Far more than anything takes on a slow computer, in ms. */
const limitMs = 60_000;
const lookEveryMs = 50;

/** A page under check: reads its content, and presses with the system's own input events. */
export interface CheckedPage {
  /** Evaluates a JavaScript expression in the page. */
  read(expression: string): Promise<unknown>;
  /** Waits until the expression is true. Rejects if it never is. */
  until(expression: string): Promise<void>;
  /** Clicks the button or link with exactly this text, once it is there. */
  press(text: string): Promise<void>;
  /** Asks the API as the page's own client does, from the page's own address. */
  ask(procedure: string, input?: unknown): Promise<unknown>;
  tell(procedure: string, input?: unknown): Promise<unknown>;
}

export function checkedPage(contents: WebContents): CheckedPage {
  const read = (expression: string) => contents.executeJavaScript(expression);

  async function until(expression: string): Promise<void> {
    const end = performance.now() + limitMs;
    while ((await read(expression)) !== true) {
      if (performance.now() > end) throw new Error(`This did not come true: ${expression}`);
      await new Promise((resolve) => setTimeout(resolve, lookEveryMs));
    }
  }

  async function press(text: string): Promise<void> {
    const found = `[...document.querySelectorAll("button, a")]
      .find((each) => each.textContent.trim() === ${JSON.stringify(text)})`;
    await until(`(${found}) !== undefined`);
    // Pages that replace one another's screens move the thing to press.
    const [x, y] = (await read(`(() => { const each = ${found}; each.scrollIntoView({ block: "center" });
      const { left, top, width, height } = each.getBoundingClientRect();
      return [Math.round(left + width / 2), Math.round(top + height / 2)]; })()`)) as [number, number];
    contents.sendInputEvent({ type: "mouseMove", x, y });
    contents.sendInputEvent({ type: "mouseDown", x, y, button: "left", clickCount: 1 });
    contents.sendInputEvent({ type: "mouseUp", x, y, button: "left", clickCount: 1 });
  }

  async function atDoor(path: string, init: object): Promise<unknown> {
    const sent = `fetch(${JSON.stringify(path)}, ${JSON.stringify(init)})`;
    const answer = (await read(
      `${sent}.then(async (response) => [response.status, await response.json()])`,
    )) as [number, { readonly result?: { readonly data: unknown } }];
    const [status, { result }] = answer;
    if (status !== 200 || result === undefined) throw new Error(`${path} answered ${status}.`);
    return result.data;
  }

  return {
    read,
    until,
    press,
    ask: (procedure, input = {}) =>
      atDoor(`/trpc/${procedure}?input=${encodeURIComponent(JSON.stringify(input))}`, {}),
    tell: (procedure, input = {}) =>
      atDoor(`/trpc/${procedure}`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify(input),
      }),
  };
}
