import { createContext, useContext, useSyncExternalStore } from 'react';
import type { BenchSession } from './session/session';
import type { BenchState } from './session/state';

export const BenchContext = createContext<BenchSession | null>(null);

export function useSession(): BenchSession {
  const session = useContext(BenchContext);
  if (!session) throw new Error('This part of the bench stands outside of a bench.');
  return session;
}

/**
 * A part of the state; renders again only when that part changes, and while the hand moves only once it rests.
 * `pick` gives a primitive or an object kept in the state.
 */
export function useBench<Part>(pick: (state: BenchState) => Part): Part {
  const { calm } = useSession().store;
  const read = () => pick(calm.get());
  return useSyncExternalStore(calm.subscribe, read, read);
}
