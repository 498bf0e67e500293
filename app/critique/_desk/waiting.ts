'use client';
import { useSyncExternalStore } from 'react';
import { openDevice } from '@/app/_bench/session/device';
import type { WriteNote } from '@/shared/schemas/note';

/**
 * Notes that the server has not confirmed yet, kept on this device and apart by person, whatever line they belong to.
 * They go in before they are sent and leave only when the server has them.
 */
const placeOf = (personKey: string) => `kerncrit/${encodeURIComponent(personKey)}/notes-waiting`;
const changed = 'kerncrit-notes-waiting';
const none: readonly WriteNote[] = [];
const parsed = new Map<string, readonly WriteNote[]>();

export function waitingNotes(personKey: string): readonly WriteNote[] {
  const text = openDevice().store.get(placeOf(personKey));
  if (!text) return none;
  const known = parsed.get(text);
  if (known) return known;
  const notes = readNotes(text);
  parsed.clear();
  parsed.set(text, notes);
  return notes;
}

export function keepWaiting(personKey: string, note: WriteNote): void {
  write(personKey, [...waitingNotes(personKey).filter(({ requestKey }) => requestKey !== note.requestKey), note]);
}

export function dropWaiting(personKey: string, requestKey: string): void {
  write(
    personKey,
    waitingNotes(personKey).filter((note) => note.requestKey !== requestKey),
  );
}

/** The waiting notes as they are now, in this window and in others. */
export function useWaitingNotes(personKey: string): readonly WriteNote[] {
  return useSyncExternalStore(
    subscribe,
    () => waitingNotes(personKey),
    () => none,
  );
}

function write(personKey: string, notes: readonly WriteNote[]): void {
  const { store } = openDevice();
  if (notes.length === 0) store.remove(placeOf(personKey));
  else store.set(placeOf(personKey), JSON.stringify(notes));
  window.dispatchEvent(new Event(changed));
}

function subscribe(tell: () => void): () => void {
  window.addEventListener(changed, tell);
  window.addEventListener('storage', tell);
  return () => {
    window.removeEventListener(changed, tell);
    window.removeEventListener('storage', tell);
  };
}

function readNotes(text: string): readonly WriteNote[] {
  try {
    const value: unknown = JSON.parse(text);
    return Array.isArray(value) ? (value as WriteNote[]) : none;
  } catch {
    return none;
  }
}
