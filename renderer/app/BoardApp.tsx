import { BoardScreen } from "../screens/board/BoardScreen.tsx";
import { ClientProvider } from "./client.tsx";
import { useChanges } from "./feed.ts";

/** Everything in the board's window: it only reads, and follows the change feed like the desk. */
export function BoardApp() {
  useChanges();
  return (
    <ClientProvider>
      <BoardScreen />
    </ClientProvider>
  );
}
