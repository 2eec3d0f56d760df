import { app, type Input, type WebContents } from "electron";

/** Chromium's own steps: a level of 1 is 1.2 times as large. From about 60 to 300 %. */
const [smallest, largest] = [-3, 6];

/** Restores the zoom keys that a menu would bring: Ctrl (macOS: Cmd) with +, - and 0, while the desk is not shut. */
export function setupZoomKeys(isShut: () => boolean): void {
  app.on("web-contents-created", (_event, contents) => {
    contents.on("before-input-event", (event, input) => {
      const level = wantedLevel(input, contents);
      if (level === undefined || isShut()) return;
      event.preventDefault();
      contents.setZoomLevel(Math.min(largest, Math.max(smallest, level)));
    });
  });
}

function wantedLevel(input: Input, contents: WebContents): number | undefined {
  const command = process.platform === "darwin" ? input.meta : input.control;
  if (input.type !== "keyDown" || !command || input.alt) return undefined;
  switch (input.key) {
    case "+":
    case "=":
      return contents.getZoomLevel() + 1;
    case "-":
      return contents.getZoomLevel() - 1;
    case "0":
      return 0;
    default:
      return undefined;
  }
}
