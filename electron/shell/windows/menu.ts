import { app, Menu, type MenuItemConstructorOptions } from "electron";

/**
 * Sets the menu: none in the packaged app, except on macOS, where copy, paste and quit need one. In development a
 * hidden menu (Alt shows it) offers reload and the developer tools. A shut desk has none, on macOS only editing.
 */
export function setMenu(shut: boolean): void {
  const items: MenuItemConstructorOptions[] = [];
  if (process.platform === "darwin") {
    items.push(shut ? { label: app.name, submenu: [] } : { role: "appMenu" }, { role: "editMenu" });
    if (!shut) items.push({ role: "windowMenu" });
  }
  if (!app.isPackaged && !shut) items.push({ role: "viewMenu" });
  Menu.setApplicationMenu(items.length === 0 ? null : Menu.buildFromTemplate(items));
}
