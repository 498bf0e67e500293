/** Something that can be read and subscribed to. */
export type Readable<State> = {
  get(): State;
  subscribe(listener: () => void): () => void;
};

/**
 * A small store with two paces. Its own listeners (the drawings) hear of every change at once. Those of `settled`
 * (words and controls) hear at once of single steps, but of a drag or a held key only when it pauses, so that text
 * never slows the drawing down.
 */
export type Store<State> = Readable<State> & {
  set(change: Partial<State>): void;
  /** Like `set`, for one of the many changes of a drag or a held key. */
  setByHand(change: Partial<State>): void;
  readonly settled: Readable<State>;
};

/** After this long without a change, a drag or a held key counts as paused. */
const REST_MS = 140;

export function createStore<State extends object>(initial: State): Store<State> {
  let state = initial;
  let settledState = initial;
  let movedAt = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listeners = new Set<() => void>();
  const settledListeners = new Set<() => void>();

  function rest(): void {
    clearTimeout(timer);
    timer = undefined;
    settledState = state;
  }

  function checkWhetherAtRest(): void {
    const left = movedAt + REST_MS - performance.now();
    if (left > 1) return void (timer = setTimeout(checkWhetherAtRest, left));
    rest();
    tell(settledListeners);
  }

  return {
    get: () => state,
    subscribe: (listener) => add(listeners, listener),
    set(part) {
      state = { ...state, ...part };
      // Before listeners are called, so that listeners of both see the settled state.
      rest();
      tell(listeners);
      tell(settledListeners);
    },
    setByHand(part) {
      movedAt = performance.now();
      state = { ...state, ...part };
      tell(listeners);
      timer ??= setTimeout(checkWhetherAtRest, REST_MS);
    },
    settled: { get: () => settledState, subscribe: (listener) => add(settledListeners, listener) },
  };
}

function tell(listeners: Set<() => void>): void {
  for (const listener of listeners) listener();
}

function add(listeners: Set<() => void>, listener: () => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}
