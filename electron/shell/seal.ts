import { safeStorage } from "electron";

/**
 * Seals by the system's own keys: the keychain of macOS, DPAPI of Windows, a secret service of Linux. Where there is none
 * (Electron's `basic_text`, whose key everybody knows) nothing is sealed. Use it once the app is ready.
 */
export const systemSealer = {
  seal: (text: string): Uint8Array | null => (canSeal() ? safeStorage.encryptString(text) : null),
  open: (sealed: Uint8Array): string => safeStorage.decryptString(Buffer.from(sealed)),
};

function canSeal(): boolean {
  if (!safeStorage.isEncryptionAvailable()) return false;
  return process.platform !== "linux" || safeStorage.getSelectedStorageBackend() !== "basic_text";
}
