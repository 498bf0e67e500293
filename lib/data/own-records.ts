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
        links: { select: { purpose: true, createdAt: true, expiresAt: true, usedAt: true } },
        linksHandedBy: { select: { purpose: true, createdAt: true } },
        joinLinksMade: { select: { role: true, createdAt: true, expiresAt: true, course: { select: { title: true } } } },
        facesOffered: { select: { licenceNote: true, createdAt: true, course: { select: { title: true } }, face: { select: { family: true, style: true } } } },
        acts: { orderBy: { at: 'asc' }, select: { verb: true, at: true, course: { select: { title: true } } } },
      },
    }),

  memberships: () =>
    db.member.findMany({
      where: { user: self(actor) },
      select: { role: true, joinedAt: true, removedAt: true, accommodations: true, course: { select: { title: true } }, section: { select: { name: true } },
        extensions: { select: { dueLocal: true, dueAt: true, createdAt: true, round: { select: { number: true, exercise: { select: { title: true } } } } } },
        choices: { select: { chosenAt: true, proof: { select: { number: true } }, round: { select: { number: true, exercise: { select: { title: true } } } } } },
      },
    }),

  drafts: () =>
    db.draft.findMany({
      where: { member: { user: self(actor) } },
      select: { purpose: true, tracking: true, offsets: true, updatedAt: true, specimenVersion: { select: { text: true } }, changes: { orderBy: { receivedAt: 'asc' }, select: { tracking: true, offsets: true, receivedAt: true } } },
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

  /** What they made as those who teach do. Students' work that it is about is not theirs, so it is not in it. */
  taught: () => {
    const line = { specimenVersion: { select: { text: true } } };
    const round = { round: { select: { number: true, exercise: { select: { title: true } } } } };
    return db.member.findMany({
      where: { user: self(actor) },
      select: {
        course: { select: { title: true } },
        references: { select: { ...line, slot: true, tracking: true, offsets: true, tolerances: true, reasons: true, updatedAt: true } },
        referenceSets: { select: { number: true, createdAt: true, exercise: { select: { title: true } } } },
        referenceSetItems: { select: { ...line, tracking: true, offsets: true, tolerances: true, reasons: true, set: { select: { number: true } } } },
        stockNotes: { select: { shared: true, fault: true, body: true, createdAt: true, removedAt: true } },
        notes: { select: { fromPair: true, toPair: true, suggestion: true, createdAt: true, settledAt: true, removedAt: true, proofItem: { select: line } } },
        markTasks: { select: { slot: true, state: true, doneAt: true, createdAt: true, proof: { select: round } } },
        markSkips: { select: { at: true, proof: { select: round } } },
        markEvents: { select: { why: true, before: true, after: true, at: true, mark: { select: { criterionVersion: { select: { title: true } } } } } },
        choicesMade: { select: { ...round, chosenAt: true } },
        releasesMade: { select: { ...round, number: true, releasedAt: true } },
        walls: { select: { ...round, openedAt: true, closedAt: true } },
      },
    });
  },
});
