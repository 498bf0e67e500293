'use client';
import { useRef, useState, useSyncExternalStore } from 'react';
import { send } from '@/app/_ui/send';

export type Point = { line: string; pair: number };
type Kept = { phone: string; asking: number; point: Point | null };

/**
 * Where this phone points. Its random word and its point are kept on the phone, for this wall alone. Taps are sent one after
 * the other, the last one always last; when the instructor asks anew, the point is gone here too.
 */
export function usePoint(
  code: string,
  asking: number,
): { point: Point | null; aim: (at: Point | null) => void; said: string } {
  const place = `kerncrit/wall/${code}`;
  // On the server nothing is known of the phone; the first drawing must be the same there and here.
  const here = useSyncExternalStore(
    nothingChanges,
    () => true,
    () => false,
  );
  const [changed, setChanged] = useState<Kept | null>(null);
  const [said, setSaid] = useState('');
  const sending = useRef<Promise<unknown>>(Promise.resolve());
  const kept = changed ?? (here ? read(place) : null);
  const point = kept && kept.asking === asking ? kept.point : null;

  const aim = (at: Point | null) => {
    const next: Kept = { phone: kept?.phone ?? newPhone(), asking, point: at };
    setChanged(next);
    keep(place, next);
    setSaid('');
    sending.current = sending.current.then(async () => {
      const answer = await send('PUT', `/api/w/${code}`, { phone: next.phone, at });
      if (answer.ok) return setSaid(at === null ? 'Your point is taken back.' : 'Counted.');
      setSaid(answer.said);
      setChanged((now) => (now === next ? { ...next, point: kept?.point ?? null } : now));
    });
  };
  return { point, aim, said };
}

const nothingChanges = () => () => {};

/** 16 random bytes in base64url. */
function newPhone(): string {
  return btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}

function read(place: string): Kept | null {
  try {
    const kept = JSON.parse(localStorage.getItem(place) ?? 'null') as Kept | null;
    return kept && typeof kept.phone === 'string' ? kept : null;
  } catch {
    return null;
  }
}

function keep(place: string, kept: Kept): void {
  try {
    localStorage.setItem(place, JSON.stringify(kept));
  } catch {
    // A phone that keeps nothing points as long as the page is open.
  }
}
