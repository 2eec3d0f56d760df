import { app, Menu, type MenuItemConstructorOptions } from "electron";

/**
 * No menu in the packaged app, except on macOS, where copy, paste and quit come from one. In development a hidden
 * menu (Alt shows it) offers reload and the developer tools.
 */
export function setupMenu(): void {
  const items: MenuItemConstructorOptions[] = [];
  if (process.platform === "darwin") {
    items.push({ role: "appMenu" }, { role: "editMenu" }, { role: "windowMenu" });
  }
  if (!app.isPackaged) items.push({ role: "viewMenu" });
  Menu.setApplicationMenu(items.length === 0 ? null : Menu.buildFromTemplate(items));
}
