'use client';

import { useRef, useState, useSyncExternalStore } from 'react';
import { Button } from '@/app/_ui/Button';
import { send } from '@/app/_ui/send';
import { followingWords, useLive } from '@/app/_ui/use-live';
import { usePacks } from '@/app/_ui/use-packs';
import type { PhoneState, WallPack } from '@/shared/schemas/wall';
import { sameAgain } from '@/shared/class/wall';
import { Aim } from './aim';
import style from './pointer.module.css';

type Props = { code: string; packs: WallPack[]; first: PhoneState };

/** For a phone in the room: one line of the wall at a time, large enough to point at one of its gaps. */
export function Pointer({ code, packs: firstPacks, first }: Props) {
  const { state, following } = useLive(`/api/w/${code}`, first, joined);
  const packs = usePacks(
    `/api/w/${code}`,
    firstPacks,
    state.lines.map(({ version }) => version),
  );
  const { point, aim, message } = usePoint(code, state.asking);
  const [key, setKey] = useState<string | null>(null);
  const at = Math.max(
    0,
    state.lines.findIndex((line) => line.key === (key ?? point?.line)),
  );
  const line = state.lines[at];
  const pack = line && packs.get(line.version);
  const go = (by: number) => setKey(state.lines[(at + by + state.lines.length) % state.lines.length]!.key);
  const over = following === 'over';
  return (
    <main id="main" tabIndex={-1} data-frame="none" className={style.page}>
      <h1 className={style.title}>Point at a gap</h1>
      <p className={style.lead}>
        {over
          ? 'The wall is closed. Thank you; nothing of you was kept.'
          : state.pointing
            ? 'Which gap catches your eye? Tap it. Tap another to move your point, or the same one to remove it.'
            : 'Pointing is closed at the moment. This page continues by itself when it opens.'}
      </p>
      {!over && line && pack && (
        <>
          {state.lines.length > 1 && (
            <div className={style.which}>
              <Button small onClick={() => go(-1)} aria-label="Previous line">
                ‹ Before
              </Button>
              <label>
                Line{' '}
                <select value={line.key} onChange={(event) => setKey(event.target.value)}>
                  {state.lines.map(({ key: value, sign }) => (
                    <option key={value} value={value}>
                      {sign}
                    </option>
                  ))}
                </select>
              </label>
              <Button small onClick={() => go(1)} aria-label="Next line">
                Next ›
              </Button>
            </div>
          )}
          {state.lines.length === 1 && <p className={style.which}>Line {line.sign}</p>}
          <Aim
            key={line.key}
            pack={pack}
            line={line}
            chosen={point?.line === line.key ? point.pair : null}
            off={!state.pointing}
            choose={(pair) => aim(pair === null ? null : { line: line.key, pair })}
          />
          {point && point.line !== line.key && (
            <p>
              You point at line {state.lines.find((one) => one.key === point.line)?.sign ?? 'that is gone'}. A tap here
              moves your point.
            </p>
          )}
          {point && <Button onClick={() => aim(null)}>Remove my point</Button>}
        </>
      )}
      {!over && !line && <p>No line is on the wall yet.</p>}
      <p role="status" className={style.message}>
        {message}
      </p>
      <p className={style.small}>
        {followingWords[following]}. This page asks for no name; a random code keeps your taps apart from other
        people’s; it identifies no one.
      </p>
    </main>
  );
}

const joined = (before: PhoneState, now: PhoneState): PhoneState => ({
  ...now,
  lines: sameAgain(before.lines, now.lines),
});

type Point = { line: string; pair: number };
type Stored = { phone: string; asking: number; point: Point | null };

/**
 * Where this phone points. Its random code and its point are stored on the phone, for this wall only. Taps are sent one
 * after the other, so that the last one wins; when the instructor asks anew, the point is gone here too.
 */
function usePoint(
  code: string,
  asking: number,
): { point: Point | null; aim: (at: Point | null) => void; message: string } {
  const place = `kerncrit/wall/${code}`;
  // The server knows nothing about the phone; the first rendering must be the same in both places.
  const here = useSyncExternalStore(
    nothingChanges,
    () => true,
    () => false,
  );
  const [changed, setChanged] = useState<Stored | null>(null);
  const [message, setMessage] = useState('');
  const sending = useRef<Promise<unknown>>(Promise.resolve());
  const stored = changed ?? (here ? read(place) : null);
  const point = stored && stored.asking === asking ? stored.point : null;

  const aim = (at: Point | null) => {
    const next: Stored = { phone: stored?.phone ?? newPhone(), asking, point: at };
    setChanged(next);
    keep(place, next);
    setMessage('');
    sending.current = sending.current.then(async () => {
      const answer = await send('PUT', `/api/w/${code}`, { phone: next.phone, at });
      if (answer.ok) return setMessage(at === null ? 'Your point is removed.' : 'Counted.');
      setMessage(answer.message);
      setChanged((now) => (now === next ? { ...next, point: stored?.point ?? null } : now));
    });
  };
  return { point, aim, message };
}

const nothingChanges = () => () => {};

/** 16 random bytes in base64url. */
function newPhone(): string {
  return btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replace(/=+$/, '');
}

function read(place: string): Stored | null {
  try {
    const stored = JSON.parse(localStorage.getItem(place) ?? 'null') as Stored | null;
    return stored && typeof stored.phone === 'string' ? stored : null;
  } catch {
    return null;
  }
}

function keep(place: string, stored: Stored): void {
  try {
    localStorage.setItem(place, JSON.stringify(stored));
  } catch {
    // On a phone without storage the point lasts as long as the page is open.
  }
}
