import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { PracticeResult } from '@/shared/schemas/practice';
import type { Db } from './client';
import { newId } from './ids';
import { self } from './scope';

/** What the actor's own eye could see in practice. No function reads another person's, for any role. */
export const practiceResultData = (actor: Actor, db: Db) => ({
  own: () => db.practiceResult.findMany({ where: { user: self(actor) }, orderBy: [{ at: 'asc' }, { id: 'asc' }] }),

  /**
   * Keeps a result once: one that is there already under its key stays as it is. @throws P2002 when another request was
   * first: retry.
   */
  keep: async (
    { requestKey, at, kind, size, fault, task, trials, turns, unmoved }: PracticeResult,
    now: Date,
  ): Promise<void> => {
    const person = await db.user.findFirst({ where: self(actor), select: { id: true } });
    if (!person) return;
    const key = { userId: person.id, requestKey };
    const ended = new Date(at);
    const row = {
      ...key,
      id: newId(),
      kind: kind === 'any' ? '' : kind,
      size,
      threshold: fault,
      payload: canonicalJson({ task, trials, turns, unmoved }),
      at: ended > now ? now : ended,
    };
    await db.practiceResult.upsert({ where: { userId_requestKey: key }, create: row, update: {} });
  },
});
