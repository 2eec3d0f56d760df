import { dialog, ipcMain } from "electron";
import type { Desk } from "../../api/door/desk.ts";
import { whyNotMade } from "../../backups/trouble.ts";
import type { Windows } from "../windows/windows.ts";
import { isDeskPage, isOrganiser } from "./bridge.ts";
import type { FolderOutcome } from "./bridge-types.ts";

/** Lets the desk's page ask for the second folder of backups, which a person picks in the system's dialog. */
export function setupBackupBridge(windows: Windows, { backups, lock }: Desk): void {
  ipcMain.handle("bridge:chooseBackupFolder", async (event): Promise<FolderOutcome> => {
    if (!isDeskPage(event.senderFrame)) throw new Error("Only the desk's page may ask this.");
    if (!isOrganiser(lock)) throw new Error("Only the organiser may ask this.");
    const properties = ["openDirectory" as const, "createDirectory" as const];
    const { canceled, filePaths } = await dialog.showOpenDialog(windows.desk(), { properties });
    const [folder] = filePaths;
    if (canceled || folder === undefined || backups === null || !isOrganiser(lock))
      return { chosen: false, trouble: null };
    try {
      await backups.chooseSecond(folder);
    } catch (error) {
      return { chosen: false, trouble: whyNotMade(error) };
    }
    // Not awaited: the page shows the progress.
    void backups.run();
    return { chosen: true };
  });
}
