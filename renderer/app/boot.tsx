import { createRoot } from "react-dom/client";
import "./base.css";
import "./print.css";
import { refuseStrayDrops } from "./drops.ts";
import { languageToBegin } from "./language.ts";
import { setUpWords } from "./words.ts";

/** The host of the window is its role: `app://board` shows the hall's board, every other host the desk. */
async function loadApp(host: string) {
  if (host === "board") {
    document.documentElement.dataset.theme = "hall";
    return (await import("./BoardApp.tsx")).BoardApp;
  }
  document.documentElement.dataset.theme = "desk";
  return (await import("./DeskApp.tsx")).DeskApp;
}

async function boot(): Promise<void> {
  refuseStrayDrops();
  const root = document.getElementById("root");
  if (root === null) throw new Error("The page has no root element.");
  const [App] = await Promise.all([loadApp(location.host), languageToBegin().then(setUpWords)]);
  createRoot(root).render(<App />);
}

await boot();
