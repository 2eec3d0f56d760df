import { BoardScreen } from "../screens/board/BoardScreen.tsx";
import { ClientProvider } from "./client.tsx";
import { useChanges } from "./feed.ts";
import { useLanguage } from "./language.ts";

/** Everything in the board's window: it only reads, and follows the change feed like the desk. */
export function BoardApp() {
  useChanges();
  return (
    <ClientProvider>
      <Board />
    </ClientProvider>
  );
}

function Board() {
  useLanguage();
  return <BoardScreen />;
}
