import type { WebContents } from "electron";

/** Far more than anything takes on a slow machine. */
const limitMs = 60_000;
const lookEveryMs = 50;

/** A page as a check sees and handles it: what stands in it, and presses that come in as the system's own do. */
export interface CheckedPage {
  /** The value of a JavaScript expression in the page. */
  read(expression: string): Promise<unknown>;
  /** Waits until the expression is true. Rejects when it does not become so. */
  until(expression: string): Promise<void>;
  /** Presses the button or link with exactly this text, once it is there, with the mouse. */
  press(text: string): Promise<void>;
  /** Asks the door as the page's own client does, by the page's own address. */
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
    // Pages that write into one another's places move what is to be pressed.
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
