import { createContext, useContext, useSyncExternalStore } from 'react';
import type { BenchSession } from './session/session';
import type { BenchState } from './session/state';

export const BenchContext = createContext<BenchSession | null>(null);

export function useSession(): BenchSession {
  const session = useContext(BenchContext);
  if (!session) throw new Error('This part of the bench stands outside of a bench.');
  return session;
}

/** A part of the state; renders again only when that part changes. `pick` gives a primitive or an object kept in the state. */
export function useBench<Part>(pick: (state: BenchState) => Part): Part {
  const { store } = useSession();
  const read = () => pick(store.get());
  return useSyncExternalStore(store.subscribe, read, read);
}
