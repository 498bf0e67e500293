import type { Actor } from '@/lib/access/actor';
import { accountData } from './account';
import { auditData } from './audit';
import { courseCopyData } from './course-copy';
import { courseData } from './courses';
import { eraseData } from './erase';
import { keepingData } from './keeping';
import { ownRecordData } from './own-records';
import { joinLinkData } from './join-links';
import { memberData } from './members';
import { oneTimeLinkData } from './one-time-links';
import { rosterData } from './roster';
import { rateLimitData } from './rate-limits';
import { sectionData } from './sections';
import { sessionData } from './sessions';
import { signInData } from './sign-in';
import { database, type Db } from './client';
import { criterionData } from './criteria';
import { demonstrationData } from './demonstrations';
import { draftData } from './drafts';
import { exerciseData } from './exercises';
import { classSummaryData } from './class-summary';
import { classMapData } from './class-map';
import { critiqueData } from './critique';
import { exportData } from './exports';
import { markSkipData } from './mark-skips';
import { markTaskData } from './mark-tasks';
import { markData } from './marks';
import { noteData } from './notes';
import { packData } from './packs';
import { practiceResultData } from './practice-results';
import { proofData } from './proofs';
import { referenceSetData } from './reference-sets';
import { referenceData } from './references';
import { releaseData } from './releases';
import { roundStateData } from './round-state';
import { roundData } from './rounds';
import { seatData } from './seats';
import { specimenData } from './specimens';
import { stockNoteData } from './stock-notes';
import { wallData } from './walls';
import { termData } from './terms';

/** All queries, bound to one actor. A file a concept; add yours here. */
const concepts = {
  account: accountData,
  audit: auditData,
  courses: courseData,
  courseCopy: courseCopyData,
  erase: eraseData,
  keeping: keepingData,
  ownRecords: ownRecordData,
  joinLinks: joinLinkData,
  members: memberData,
  oneTimeLinks: oneTimeLinkData,
  rateLimits: rateLimitData,
  roster: rosterData,
  sections: sectionData,
  sessions: sessionData,
  signIn: signInData,
  demonstrations: demonstrationData,
  drafts: draftData,
  practiceResults: practiceResultData,
  proofs: proofData,
  seats: seatData,
  exercises: exerciseData,
  rounds: roundData,
  roundState: roundStateData,
  criteria: criterionData,
  specimens: specimenData,
  packs: packData,
  references: referenceData,
  referenceSets: referenceSetData,
  classMap: classMapData,
  classSummary: classSummaryData,
  critique: critiqueData,
  exports: exportData,
  markSkips: markSkipData,
  markTasks: markTaskData,
  marks: markData,
  notes: noteData,
  releases: releaseData,
  stockNotes: stockNoteData,
  walls: wallData,
  terms: termData,
};

type Concepts = { [Name in keyof typeof concepts]: ReturnType<(typeof concepts)[Name]> };

export type ScopedData = Concepts & {
  /**
   * The same queries inside one database transaction; never catch a unique-constraint error inside it (PostgreSQL
   * aborts the whole transaction): retry from outside with retryOnConflict.
   */
  transaction<Result>(body: (data: ScopedData) => Promise<Result>): Promise<Result>;
};

/** Each concept is bound when it is first asked for: most operations need two or three of them. */
export function scopedData(actor: Actor, db: Db = database()): ScopedData {
  const bound: Partial<Record<string, unknown>> = {
    transaction: (body: (data: ScopedData) => Promise<unknown>) =>
      '$connect' in db ? db.$transaction((inside) => body(scopedData(actor, inside))) : body(scopedData(actor, db)),
  };
  return new Proxy(bound, {
    get: (target, name: string) => (target[name] ??= concepts[name as keyof Concepts]?.(actor, db)),
  }) as ScopedData;
}
