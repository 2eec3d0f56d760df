import {
  type ComponentType,
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import { nameOfPost, useStanding } from "./standing.tsx";

const storageKey = "initials";

interface Initials {
  /** The volunteer's initials at this window; null until given. */
  readonly initials: string | null;
  /** Returns the initials, asking for them the first time; null when the person closes the question. */
  readonly ask: () => Promise<string | null>;
  /** Asks again, when somebody else takes over. */
  readonly change: () => Promise<string | null>;
}

const InitialsContext = createContext<Initials | null>(null);

interface InitialsProviderProps {
  readonly children: ReactNode;
  /** Asks for the initials, and answers null when the person closes the question. */
  readonly question: ComponentType<{ readonly onAnswer: (initials: string | null) => void }>;
}

/** Keeps the initials as long as the window lives: a new session asks again. */
export function InitialsProvider({ children, question: Question }: InitialsProviderProps) {
  const [initials, setInitials] = useState(() => sessionStorage.getItem(storageKey));
  const [asking, setAsking] = useState(false);
  const waiting = useRef<((initials: string | null) => void)[]>([]);

  const { post } = useStanding();
  const whose = nameOfPost(post);
  const before = useRef(whose);
  useEffect(() => {
    if (whose === before.current) return;
    before.current = whose;
    // The next person enters under their own initials.
    sessionStorage.removeItem(storageKey);
    setInitials(null);
  }, [whose]);

  const change = useCallback(() => {
    setAsking(true);
    return new Promise<string | null>((resolve) => waiting.current.push(resolve));
  }, []);

  const answer = useCallback((given: string | null) => {
    setAsking(false);
    if (given !== null) {
      sessionStorage.setItem(storageKey, given);
      setInitials(given);
    }
    for (const resolve of waiting.current.splice(0)) resolve(given);
  }, []);

  const value = useMemo<Initials>(
    () => ({ initials, change, ask: () => (initials === null ? change() : Promise.resolve(initials)) }),
    [initials, change],
  );
  return (
    <InitialsContext value={value}>
      {children}
      {asking && <Question onAnswer={answer} />}
    </InitialsContext>
  );
}

/** `const { ask } = useInitials(); const by = await ask(); if (by === null) return;` before anything is entered. */
export function useInitials(): Initials {
  const initials = useContext(InitialsContext);
  if (initials === null) throw new Error("useInitials needs the InitialsProvider above it.");
  return initials;
}
