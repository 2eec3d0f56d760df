import { ClientProvider } from "../app/client.tsx";
import { useChanges } from "../app/feed.ts";
import { useLanguage } from "../app/language.ts";
import { BoardScreen } from "../screens/board/BoardScreen.tsx";

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
