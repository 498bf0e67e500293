import type { Actor } from '@/lib/access/actor';
import type { Db } from './client';
import { self } from './scope';

/**
 * Everything that is kept about the actor's own person and that they may see: what they made themselves, and what was
 * released to them. Never notes or marks that are not released.
 */
export const ownRecordData = (actor: Actor, db: Db) => ({
  person: () =>
    db.user.findFirst({
      where: self(actor),
      select: {
        name: true, emailNorm: true, createdAt: true, preferences: true, mayCreateCourses: true,
        identities: { select: { issuer: true, subject: true, createdAt: true } },
        sessions: { select: { createdAt: true, lastSeenAt: true, expiresAt: true, revokedAt: true } },
      },
    }),

  memberships: () =>
    db.member.findMany({
      where: { user: self(actor) },
      select: { role: true, joinedAt: true, removedAt: true, accommodations: true, course: { select: { title: true } }, section: { select: { name: true } } },
    }),

  drafts: () =>
    db.draft.findMany({
      where: { member: { user: self(actor) } },
      select: { purpose: true, tracking: true, offsets: true, updatedAt: true, specimenVersion: { select: { text: true } } },
    }),

  proofs: () =>
    db.proof.findMany({
      where: { member: { user: self(actor) } },
      select: {
        number: true, reasoning: true, receivedAt: true, round: { select: { number: true, exercise: { select: { title: true } } } },
        items: { select: { tracking: true, offsets: true, specimenVersion: { select: { text: true } } } },
      },
    }),

  releases: () =>
    db.release.findMany({
      where: { member: { user: self(actor) } },
      select: { number: true, releasedAt: true, snapshot: true, round: { select: { number: true, exercise: { select: { title: true } } } } },
    }),

  /** What they wrote in notes: as a student under released notes, as a teacher in their own. */
  words: () =>
    db.noteEntry.findMany({ where: { author: { user: self(actor) } }, select: { body: true, at: true } }),
});
