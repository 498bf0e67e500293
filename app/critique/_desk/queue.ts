'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState, useTransition } from 'react';
import type { DeskLine } from '@/shared/critique/desk';
import { send } from '@/app/_ui/send';

/** A claim that was sent and not answered yet: what ends a claim waits for it, or the server could meet it afterwards. */
let claiming: Promise<unknown> = Promise.resolve();

type Way = { go: (address: string) => void; say: (words: string) => void };

/** What can be done with a proof in the queue: claim the next one, put this one off, give it back. */
export function useQueue({ proof, exercise, round, queue, line, two }: DeskLine, { go, say }: Way) {
  const [letGo, setLetGo] = useState(false);
  // The second marking has a queue of its own, without sections.
  const second = two.slot === 'second';
  const section = queue.section && !second ? `?section=${queue.section.id}` : '';

  async function takeNext() {
    const answer = await send<{ proof: string | null; line: string | null }>('POST', '/api/critique/next', {
      exerciseId: exercise.id,
      roundNumber: round.number,
      section: queue.section?.id ?? null,
      after: proof.token,
      second,
    });
    if (!answer.ok) return say(answer.message);
    if (answer.result.proof === null) return say('Nothing else is waiting: other markers are working on the rest.');
    go(`/critique/${answer.result.proof}/${answer.result.line ?? line.specimenId}${section}`);
  }

  return {
    /** This marker has given the proof back, so the page doesn't claim it again. */
    letGo,
    takeNext,
    async skip() {
      setLetGo(true);
      await claiming;
      const answer = await send('PUT', '/api/critique/skips', { proof: proof.token, to: 'skipped' });
      if (!answer.ok) {
        setLetGo(false);
        return say(answer.message);
      }
      say('Skipped: it comes last for you.');
      await takeNext();
    },
    async takeUp() {
      const answer = await send('PUT', '/api/critique/skips', { proof: proof.token, to: 'taken-up' });
      say(answer.ok ? 'Resumed: it is back in its place.' : answer.message);
    },
    async giveBack() {
      setLetGo(true);
      await claiming;
      const answer = await send('DELETE', '/api/critique/claims', { proof: proof.token });
      if (answer.ok)
        return go(`/exercises/${exercise.id}/rounds/${round.number}/${second ? 'second' : 'critique'}${section}`);
      setLetGo(false);
      say(answer.message);
    },
  };
}

/**
 * Keeps the proof claimed for this marker while the page is open and visible; names the marker who has it where another
 * one does.
 */
export function useClaim(token: string, heldBy: string | null, letGo: boolean): { heldBy: string | null } {
  const [refused, setRefused] = useState<string | null>(null);
  useEffect(() => {
    if (letGo) return;
    const claim = async () => {
      if (document.visibilityState !== 'visible') return;
      const asked = send<{ keptUntil: string }>('PUT', '/api/critique/claims', { proof: token });
      claiming = asked;
      const answer = await asked;
      if (answer.ok) setRefused(null);
      else if (!answer.again) setRefused((answer.body as { heldBy?: string } | null)?.heldBy ?? null);
    };
    const first = setTimeout(() => void claim(), 400);
    const again = setInterval(() => void claim(), 4 * 60_000);
    return () => {
      clearTimeout(first);
      clearInterval(again);
    };
  }, [token, letGo]);
  return { heldBy: refused ?? heldBy };
}

/** Long enough for a slow page; after that this page accepts keys again. */
const patience = 10_000;

/**
 * Leads to other pages, and shows when one is loading: from then on the keys of this page do nothing, so that a key
 * pressed too early can't change the line just left.
 */
export function useGoing(): { leaving: boolean; go: (address: string) => void } {
  const router = useRouter();
  const [pending, start] = useTransition();
  const [clicked, setClicked] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const click = (event: MouseEvent) => {
      const link = event.target instanceof Element ? event.target.closest('a[href^="/"]:not([target])') : null;
      if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.button !== 0) return;
      if (link instanceof HTMLAnchorElement && link.pathname === location.pathname && link.search === location.search)
        return;
      setClicked(true);
      timer = setTimeout(() => setClicked(false), patience);
    };
    document.addEventListener('click', click);
    return () => {
      document.removeEventListener('click', click);
      clearTimeout(timer);
    };
  }, []);
  return { leaving: pending || clicked, go: (address) => start(() => router.push(address)) };
}
