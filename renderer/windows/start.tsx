import { createRoot } from "react-dom/client";
import "../app/base.css";
import "../app/print.css";
import { languageToBegin } from "../app/language.ts";
import { setUpWords } from "../words/setUp.ts";

/** The host of the window is its role: `app://board` shows the hall's board, every other host the desk. */
async function loadApp(host: string) {
  if (host === "board") {
    document.documentElement.dataset.theme = "hall";
    return (await import("./BoardApp.tsx")).BoardApp;
  }
  document.documentElement.dataset.theme = "desk";
  return (await import("./DeskApp.tsx")).DeskApp;
}

/**
 * Refuses what is dragged into the window, wherever no field takes it: a file that is let go of anywhere else would be
 * opened by the browser in place of the page.
 */
function refuseStrayDrops(): void {
  for (const type of ["dragover", "drop"] as const) {
    window.addEventListener(type, (event) => {
      // A field that takes files has said so by now.
      if (event.defaultPrevented) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = "none";
    });
  }
}

async function boot(): Promise<void> {
  refuseStrayDrops();
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const [App] = await Promise.all([loadApp(location.host), languageToBegin().then(setUpWords)]);
  createRoot(root).render(<App />);
}

await boot();
