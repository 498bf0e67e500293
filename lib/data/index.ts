import type { Actor } from './actor';
import { accountData, oneTimeLinkData } from './account';
import { auditData } from './audit';
import { calendarData } from './calendars';
import { courseCopyData } from './course-copy';
import { courseData, joinLinkData, retentionData } from './courses';
import { eraseData, ownRecordData } from './records';
import { memberData, sectionData } from './members';
import { rosterData } from './roster';
import { rateLimitData } from './rate-limits';
import { sessionData, signInData } from './sessions';
import { database, type Db } from './client';
import { criterionData, exerciseData } from './exercises';
import { demonstrationData } from './demonstrations';
import { draftData } from './drafts';
import { classMapData, classSummaryData } from './class-summary';
import { critiqueData } from './critique';
import { exportData } from './exports';
import { markSkipData, markTaskData } from './mark-tasks';
import { markData } from './marks';
import { noteData, stockNoteData } from './notes';
import { packData } from './packs';
import { practiceResultData } from './practice-results';
import { proofData } from './proofs';
import { referenceData, referenceSetData } from './references';
import { releaseData } from './releases';
import { roundData, roundStateData } from './rounds';
import { seatData } from './seats';
import { specimenData } from './specimens';
import { wallData } from './walls';
import { termData } from './terms';

/** All queries, bound to one actor. A file a concept; add yours here. */
const concepts = {
  account: accountData,
  audit: auditData,
  calendars: calendarData,
  courses: courseData,
  courseCopy: courseCopyData,
  erase: eraseData,
  retention: retentionData,
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
