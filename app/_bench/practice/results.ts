import type { PracticeKind } from '@/shared/practice/even-line';
import { openDevice } from '../session/device';
import type { Task } from './trial';

/** One finished sitting: how small a fault was seen, 1/1000 em. */
export type EyeResult = { readonly at: string; readonly task: Task; readonly kind: PracticeKind; readonly size: number; readonly fault: number };

const placeFor = (personKey: string) => `kerncrit/${encodeURIComponent(personKey)}/eye`;

export function readResults(personKey: string): EyeResult[] {
  try {
    const kept: unknown = JSON.parse(openDevice().store.get(placeFor(personKey)) ?? '[]');
    return Array.isArray(kept) ? kept.filter((one): one is EyeResult => typeof (one as EyeResult)?.fault === 'number' && typeof (one as EyeResult).at === 'string') : [];
  } catch {
    return [];
  }
}

export function keepResult(personKey: string, result: EyeResult): EyeResult[] {
  const all = [...readResults(personKey), result];
  try {
    openDevice().store.set(placeFor(personKey), JSON.stringify(all));
  } catch {
    // A full device keeps work first; the result is still shown.
  }
  return all;
}
