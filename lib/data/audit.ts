import type { Actor } from './actor';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { Db } from './client';
import { newId } from './ids';
import { coursesOf } from './scope';

/** What is written down. Past tense: it has happened. */
export type AuditVerb =
  | 'course made'
  | 'course changed'
  | 'member joined'
  | 'member removed'
  | 'member put back'
  | 'role changed'
  | 'section changed'
  | 'accommodations changed'
  | 'exercise published'
  | 'exercise closed'
  | 'exercise opened again'
  | 'exercise put aside'
  | 'exercise restored'
  | 'names shown'
  | 'line changed'
  | 'reference set made'
  | 'demonstration shown'
  | 'demonstration hidden'
  | 'course making allowed'
  | 'course making withdrawn'
  | 'join link made'
  | 'join link revoked'
  | 'password link handed over'
  | 'person erased'
  | 'marking begun'
  | 'proof chosen'
  | 'mark given'
  | 'mark changed'
  | 'mark withdrawn'
  | 'proof marked'
  | 'proof reopened'
  | 'second marking set'
  | 'difference settled'
  | 'settled level changed'
  | 'settled level withdrawn'
  | 'due date extended'
  | 'extension ended'
  | 'section dates set'
  | 'round released'
  | 'release corrected'
  | 'marks exported'
  | 'sheets exported'
  | 'notes exported'
  | 'people imported'
  | 'course copied'
  | 'records handed over'
  | 'retention ended';

export type Act = {
  courseId: string | null;
  verb: AuditVerb;
  subject: `${string}:${string}`;
  details?: Record<string, unknown>;
};

/**
 * The log of acts. Append-only: no function changes or deletes an entry, for any role. When a person is erased
 * (erase.ts) an entry no longer names them; what was done, to what and when stays.
 */
export const auditData = (actor: Actor, db: Db) => ({
  /** @param by the person who did it, where that is not the actor (a person who has just joined). */
  record: (
    { courseId, verb, subject, details = {} }: Act,
    now: Date,
    by: string | null = actor.kind === 'person' ? actor.userId : null,
  ) =>
    db.auditEvent.create({
      data: { id: newId(), courseId, actorId: by, verb, subject, details: canonicalJson(details), at: now },
    }),

  /** Many acts of one kind at once, e.g. a release to a class. */
  recordAll: (acts: readonly Act[], now: Date) =>
    db.auditEvent.createMany({
      data: acts.map(({ courseId, verb, subject, details = {} }) => ({
        id: newId(),
        courseId,
        actorId: actor.kind === 'person' ? actor.userId : null,
        verb,
        subject,
        details: canonicalJson(details),
        at: now,
      })),
    }),

  /** The newest acts, or those before one of them. */
  ofCourse: async (courseId: string, { before, take }: { before: string | null; take: number }) => {
    const last =
      before === null
        ? null
        : await db.auditEvent.findFirst({
            where: { id: before, courseId, course: coursesOf(actor) },
            select: { id: true, at: true },
          });
    return db.auditEvent.findMany({
      where: {
        courseId,
        course: coursesOf(actor),
        ...(last && { OR: [{ at: { lt: last.at } }, { at: last.at, id: { lt: last.id } }] }),
      },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take,
      select: { id: true, verb: true, subject: true, details: true, at: true, actor: { select: { name: true } } },
    });
  },
});
