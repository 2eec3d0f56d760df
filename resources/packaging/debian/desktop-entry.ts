import { menuCategories, menuWords } from "../words.ts";

/** The menu's entry. Source: freedesktop.org, Desktop Entry Specification 1.5. */
export function desktopEntryText(): string {
  const entries = {
    Type: "Application",
    Name: "Tapeline",
    ...menuWords(),
    Exec: "tapeline",
    Icon: "tapeline",
    Terminal: "false",
    Categories: `${menuCategories.join(";")};`,
    StartupNotify: "true",
    // What the windows call themselves, so that the desktop puts them under this entry.
    StartupWMClass: "tapeline",
  };
  const lines = Object.entries(entries).map(([name, value]) => `${name}=${value}\n`);
  return `[Desktop Entry]\n${lines.join("")}`;
}
