import { AthletePageScreen } from "./AthletePageScreen.tsx";
import { ListScreen } from "./ListScreen.tsx";

/** Shows all athletes, or the one of `id`. */
export function AthletesScreen({ id }: { readonly id: string | null }) {
  if (id === null || !/^\d+$/.test(id)) return <ListScreen />;
  return <AthletePageScreen key={id} athleteId={Number(id)} />;
}
