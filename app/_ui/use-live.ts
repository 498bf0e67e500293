'use client';
import { useEffect, useState } from 'react';

/**
 * `live`: changes arrive at once. `asking`: a proxy or a network blocks the events, so the page asks the server every
 * few seconds.
 */
export type Following = 'joining' | 'live' | 'asking' | 'lost' | 'over';

/** In words, for the page. */
export const followingWords: Record<Following, string> = {
  joining: 'Connecting…',
  live: 'Live',
  asking: 'Not live: asks every 3 seconds',
  lost: 'No connection; tries again',
  over: 'Ended',
};

const askEvery = 3_000;
/**
 * After this long without a message, although the server sends a beat every 15 seconds, the stream counts as blocked.
 */
const silence = { first: 6_000, after: 40_000, broken: 5_000 };
const tryAgain = 30_000;

/**
 * Follows `address`/live, each message being the whole present state; where events are blocked it asks `address`
 * itself, whose answer has the same under `state`. `join` may keep what is the same in both.
 */
export function useLive<State>(
  address: string,
  first: State,
  join: (before: State, now: State) => State = newest,
): { state: State; following: Following } {
  const [state, setState] = useState(first);
  const [following, setFollowing] = useState<Following>('joining');
  useEffect(() => {
    let source: EventSource | null = null;
    let watch = 0,
      asking = 0,
      retry = 0;
    let ended = false;
    // Browsers retry every few seconds and report each failure: only the first one starts the clock.
    let troubled = true;

    const take = (now: State) => setState((before) => join(before, now));
    const stop = () => {
      source?.close();
      for (const timer of [watch, asking, retry]) window.clearTimeout(timer);
      asking = 0;
    };
    const over = () => {
      ended = true;
      stop();
      setFollowing('over');
    };
    const ask = async () => {
      const answer = await fetch(address, { headers: { accept: 'application/json' } }).catch(() => null);
      if (ended || asking === 0) return;
      if (answer && (answer.status === 404 || answer.status === 401)) return over();
      const found = answer?.ok ? ((await answer.json().catch(() => null)) as { state: State } | null) : null;
      if (ended || asking === 0) return;
      if (found) take(found.state);
      setFollowing(found ? 'asking' : 'lost');
      asking = window.setTimeout(() => void ask(), askEvery);
    };
    const heard = () => {
      window.clearTimeout(asking);
      asking = 0;
      troubled = false;
      setFollowing('live');
      waitFor(silence.after);
    };
    const fallBack = () => {
      source?.close();
      window.clearTimeout(watch);
      retry = window.setTimeout(connect, tryAgain);
      if (asking !== 0) return;
      asking = window.setTimeout(() => void ask(), 0);
    };
    const waitFor = (time: number) => {
      window.clearTimeout(watch);
      watch = window.setTimeout(fallBack, time);
    };
    const connect = () => {
      const opened = new EventSource(`${address}/live`);
      source = opened;
      opened.addEventListener('state', ({ data }) => {
        heard();
        take(JSON.parse(String(data)) as State);
      });
      opened.addEventListener('beat', heard);
      opened.addEventListener('over', over);
      opened.addEventListener('error', () => {
        if (opened.readyState === EventSource.CLOSED) fallBack();
        else if (!troubled) {
          troubled = true;
          waitFor(silence.broken);
        }
      });
      troubled = true;
      waitFor(silence.first);
    };
    connect();
    return () => {
      ended = true;
      stop();
    };
  }, [address, join]);
  return { state, following };
}

const newest = <State>(_before: State, now: State): State => now;
