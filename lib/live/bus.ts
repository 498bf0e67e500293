/**
 * What changed: proofs of a round, a wall, where the room points on it. An id and nothing else; what is so now is read
 * from the database.
 */
export type Topic = `round:${string}` | `wall:${string}` | `points:${string}`;

/**
 * Notifies watchers that something changed. Delivery is not guaranteed: a watcher must also look by itself now and
 * then.
 */
export type Bus = {
  /**
   * Notifies all listeners of the topic, in this process and in the others. Call it after the commit. It never throws.
   */
  publish(topic: Topic): void;
  /** Calls `hear` at each change of one of the topics. Returns what ends it. */
  listen(topics: readonly Topic[], hear: () => void): () => void;
  close(): Promise<void>;
};

export type LocalBus = Bus & {
  /** All listeners are notified, since something may have been missed. */ tellAll(): void;
};

/** Within one process. */
export function localBus(): LocalBus {
  const listeners = new Map<Topic, Set<() => void>>();
  return {
    publish: (topic) => [...(listeners.get(topic) ?? [])].forEach((hear) => hear()),
    tellAll: () => new Set([...listeners.values()].flatMap((set) => [...set])).forEach((hear) => hear()),
    listen(topics, hear) {
      for (const topic of topics) listeners.set(topic, (listeners.get(topic) ?? new Set()).add(hear));
      return () => {
        for (const topic of topics) {
          const set = listeners.get(topic);
          set?.delete(hear);
          if (set?.size === 0) listeners.delete(topic);
        }
      };
    },
    close: async () => listeners.clear(),
  };
}
