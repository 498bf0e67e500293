'use client';
import { openJournal, type DeviceStore } from '@/shared/editing/journal';
import type { SentDraft } from './send-proof-form';

/** How many of these drafts have changes in this device's journal that the server does not have. */
export function unsentOnThisDevice(personKey: string, drafts: readonly SentDraft[]): number {
  return drafts.filter(({ draftId, version, spacing }) => {
    if (draftId === null) return false;
    const scope = { personKey, draftId, pairCount: spacing.offsets.length };
    const { sync } = openJournal(readOnly, scope, {
      version,
      document: { tracking: spacing.tracking, offsets: spacing.offsets },
    });
    return sync.unsent !== null || sync.inFlight !== null || sync.conflict !== null;
  }).length;
}

/** The journal as it is, looked at and not touched; a browser that keeps nothing has nothing unsent. */
const readOnly: DeviceStore = {
  get: (key) => attempt(() => window.localStorage.getItem(key)),
  set: () => {},
  remove: () => {},
  keys: () => attempt(() => Object.keys(window.localStorage)) ?? [],
};

function attempt<Value>(look: () => Value): Value | null {
  try {
    return look();
  } catch {
    return null;
  }
}
