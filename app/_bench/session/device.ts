import type { DeviceStore } from '@/shared/editing/journal';

/** The browser's own local storage; where it is blocked, a memory that lasts as long as the page. */
export function openDevice(): { store: DeviceStore; lasting: boolean } {
  try {
    const storage = window.localStorage;
    const probe = 'kerncrit/probe';
    storage.setItem(probe, '1');
    storage.removeItem(probe);
    return { store: overStorage(storage), lasting: true };
  } catch {
    return { store: inMemory(), lasting: false };
  }
}

/** A unique name for something made here. `randomUUID` is missing on pages without TLS. */
export function newKey(): string {
  return (
    crypto.randomUUID?.() ??
    Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')
  );
}

function overStorage(storage: Storage): DeviceStore {
  return {
    get: (key) => storage.getItem(key),
    set: (key, value) => storage.setItem(key, value),
    remove: (key) => storage.removeItem(key),
    keys: () => Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? ''),
  };
}

function inMemory(): DeviceStore {
  const entries = new Map<string, string>();
  return {
    get: (key) => entries.get(key) ?? null,
    set: (key, value) => void entries.set(key, value),
    remove: (key) => void entries.delete(key),
    keys: () => [...entries.keys()],
  };
}
