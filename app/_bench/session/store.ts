/** The smallest possible store: React reads it with useSyncExternalStore, drawings listen to it directly. */
export type Store<State> = {
  get(): State;
  set(change: Partial<State>): void;
  subscribe(listener: () => void): () => void;
};

export function createStore<State extends object>(initial: State): Store<State> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      state = { ...state, ...change };
      for (const listener of listeners) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}
