import { contextBridge, ipcRenderer } from "electron";
import type { Bridge } from "./bridge-types.ts";

function call(method: keyof Bridge, input?: unknown) {
  return ipcRenderer.invoke(`bridge:${method}`, input);
}

const bridge: Bridge = {
  saveFile: (file) => call("saveFile", file),
  savePdf: (page) => call("savePdf", page),
  print: (page) => call("print", page),
  paperProgress: () => call("paperProgress"),
  cancelPaper: () => call("cancelPaper"),
  openSheet: () => call("openSheet"),
  openBoard: () => call("openBoard"),
  closeBoard: () => call("closeBoard"),
  boardOpen: () => call("boardOpen"),
  displays: () => call("displays"),
  chooseBackupFolder: () => call("chooseBackupFolder"),
  report: () => call("report"),
};

contextBridge.exposeInMainWorld("bridge", bridge);
