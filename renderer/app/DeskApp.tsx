import { HomeScreen } from "../screens/home/HomeScreen.tsx";

/** Everything in the desk's window. */
export function DeskApp() {
  return <HomeScreen />;
}
