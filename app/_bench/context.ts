import { createContext, useCallback, useContext, useSyncExternalStore } from 'react';
import type { BenchSession } from './session/session';
import type { BenchState } from './session/state';
import type { Readable } from './session/store';

export const BenchContext = createContext<BenchSession | null>(null);

export function useSession(): BenchSession {
  const session = useContext(BenchContext);
  if (!session) throw new Error('This part of the bench is used outside a bench.');
  return session;
}

/**
 * A part of the state; renders again only when that part changes, and during a drag or a held key only once it pauses.
 * `pick` returns a primitive or an object kept in the state.
 */
export function useBench<Part>(pick: (state: BenchState) => Part): Part {
  return usePart(useSession().store.settled, pick);
}

/**
 * Like `useBench`, for what must always be up to date, such as that something is not saved; `atRest` is false during a
 * drag or while a key is held.
 */
export function useBenchAtOnce<Part>(pick: (state: BenchState, atRest: boolean) => Part): Part {
  const { store } = useSession();
  const subscribe = useCallback(
    (listener: () => void) => {
      const ends = [store.subscribe(listener), store.settled.subscribe(listener)];
      return () => ends.forEach((end) => end());
    },
    [store],
  );
  const read = () => pick(store.get(), store.settled.get() === store.get());
  return useSyncExternalStore(subscribe, read, read);
}

function usePart<Part>({ get, subscribe }: Readable<BenchState>, pick: (state: BenchState) => Part): Part {
  const read = () => pick(get());
  return useSyncExternalStore(subscribe, read, read);
}
