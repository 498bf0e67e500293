import type { Actor } from '@/lib/access/actor';
import { accountData } from './account';
import { auditData } from './audit';
import { courseData } from './courses';
import { eraseData } from './erase';
import { ownRecordData } from './own-records';
import { joinLinkData } from './join-links';
import { memberData } from './members';
import { oneTimeLinkData } from './one-time-links';
import { rateLimitData } from './rate-limits';
import { sectionData } from './sections';
import { sessionData } from './sessions';
import { signInData } from './sign-in';
import { database, type Db } from './client';
import { criterionData } from './criteria';
import { draftData } from './drafts';
import { exerciseData } from './exercises';
import { classSummaryData } from './class-summary';
import { critiqueData } from './critique';
import { exportData } from './exports';
import { markTaskData } from './mark-tasks';
import { markData } from './marks';
import { noteData } from './notes';
import { packData } from './packs';
import { proofData } from './proofs';
import { referenceSetData } from './reference-sets';
import { referenceData } from './references';
import { releaseData } from './releases';
import { roundData } from './rounds';
import { seatData } from './seats';
import { specimenData } from './specimens';
import { stockNoteData } from './stock-notes';

/** All queries, bound to one actor. A file a concept; add yours here. */
function concepts(actor: Actor, db: Db) {
  return {
    account: accountData(actor, db),
    audit: auditData(actor, db),
    courses: courseData(actor, db),
    erase: eraseData(actor, db),
    ownRecords: ownRecordData(actor, db),
    joinLinks: joinLinkData(actor, db),
    members: memberData(actor, db),
    oneTimeLinks: oneTimeLinkData(actor, db),
    rateLimits: rateLimitData(actor, db),
    sections: sectionData(actor, db),
    sessions: sessionData(actor, db),
    signIn: signInData(actor, db),
    drafts: draftData(actor, db),
    proofs: proofData(actor, db),
    seats: seatData(actor, db),
    exercises: exerciseData(actor, db),
    rounds: roundData(actor, db),
    criteria: criterionData(actor, db),
    specimens: specimenData(actor, db),
    packs: packData(actor, db),
    references: referenceData(actor, db),
    referenceSets: referenceSetData(actor, db),
    classSummary: classSummaryData(actor, db),
    critique: critiqueData(actor, db),
    exports: exportData(actor, db),
    markTasks: markTaskData(actor, db),
    marks: markData(actor, db),
    notes: noteData(actor, db),
    releases: releaseData(actor, db),
    stockNotes: stockNoteData(actor, db),
  };
}

export type ScopedData = ReturnType<typeof concepts> & {
  /**
   * The same queries inside one database transaction; never catch a unique-constraint error inside it (PostgreSQL
   * aborts the whole transaction): retry from outside with retryOnConflict.
   */
  transaction<Result>(body: (data: ScopedData) => Promise<Result>): Promise<Result>;
};

export function scopedData(actor: Actor, db: Db = database()): ScopedData {
  return {
    ...concepts(actor, db),
    transaction: (body) =>
      '$transaction' in db ? db.$transaction((inside) => body(scopedData(actor, inside))) : body(scopedData(actor, db)),
  };
}
