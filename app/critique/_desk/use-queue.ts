'use client';
import { useState } from 'react';
import type { DeskLine } from '@/shared/critique/desk';
import { send } from './send';

type Way = { go: (address: string) => void; say: (words: string) => void };

/** What can be done with a proof in the queue: take the next one, put this one off, give it back. */
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
    /** This marker has let the proof go, so it is not claimed again. */
    letGo,
    takeNext,
    async skip() {
      const answer = await send('PUT', '/api/critique/skips', { proof: proof.token, to: 'skipped' });
      if (!answer.ok) return say(answer.message);
      setLetGo(true);
      say('Skipped: it comes last for you.');
      await takeNext();
    },
    async takeUp() {
      const answer = await send('PUT', '/api/critique/skips', { proof: proof.token, to: 'taken-up' });
      say(answer.ok ? 'Resumed: it is back in its place.' : answer.message);
    },
    async giveBack() {
      setLetGo(true);
      const answer = await send('DELETE', '/api/critique/claims', { proof: proof.token });
      if (answer.ok)
        return go(`/exercises/${exercise.id}/rounds/${round.number}/${second ? 'second' : 'critique'}${section}`);
      setLetGo(false);
      say(answer.message);
    },
  };
}
