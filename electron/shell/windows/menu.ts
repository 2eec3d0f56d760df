import { app, Menu, type MenuItemConstructorOptions } from "electron";

/**
 * No menu in the packaged app, except on macOS, where copy, paste and quit come from one. In development a hidden
 * menu (Alt shows it) offers reload and the developer tools. A desk that is shut has none, on macOS only editing.
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
