/** Too many wait for the same slow thing. The person is told to try again in a moment. */
export class TooBusyError extends Error {
  constructor() {
    super('Too many people are signing in at this moment.');
    this.name = 'TooBusyError';
  }
}

/** Runs tasks in the order they come, at most `running` at once; refuses (TooBusyError) when `waiting` are in line. */
export function atMost({ running, waiting }: { running: number; waiting: number }) {
  let active = 0;
  const line: (() => void)[] = [];

  return async function inTurn<T>(task: () => Promise<T>): Promise<T> {
    if (active >= running) {
      if (line.length >= waiting) throw new TooBusyError();
      await new Promise<void>((start) => line.push(start));
    } else {
      active += 1;
    }
    try {
      return await task();
    } finally {
      // The place is handed on, not given back, so that nobody who comes now gets in before those who wait.
      const next = line.shift();
      if (next) next();
      else active -= 1;
    }
  };
}
