import { ClientProvider } from "../app/client.tsx";
import { useChanges } from "../app/feed.ts";
import { useLanguage } from "../app/language.ts";
import { dayOver } from "../app/table.ts";
import { BoardScreen } from "../screens/board/BoardScreen.tsx";

/** Everything in the board's window: it only reads, and follows the change feed like the desk while the day lasts. */
export function BoardApp() {
  return (
    <ClientProvider>
      {!dayOver.use() && <Changes />}
      <Board />
    </ClientProvider>
  );
}

function Changes() {
  useChanges();
  return null;
}

function Board() {
  useLanguage();
  return <BoardScreen />;
}
