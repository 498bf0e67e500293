import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { actingFor, operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { shownTo } from '@/lib/release/released';
import { courseSettingsOf } from '@/lib/rows/course';
import { releaseSnapshotSchema } from '@/shared/schemas/release';
import { practiceResultView } from './practice-results';
import { emailSchema } from '@/shared/schemas/account';
import { noSuchAccount } from './token';

/**
 * Everything stored about the person who is signed in. Where a course hides measured figures, released work is shown as
 * they saw it, without them.
 */
export const exportOwnData = operation({
  name: 'export-own-data',
  allow: 'account:own',
  input: z.object({}),
  run: ({ data, now }) => recordsOf(data, now, asShown),
});

/** Everything stored about one person, for the server's operator to give them on request. The request is logged. */
export const exportPersonData = operation({
  name: 'export-person-data',
  allow: 'system',
  input: z.object({ email: emailSchema }),
  run: async ({ data, actor, now }, { email }) => {
    const person = await data.signIn.byEmail(email);
    if (!person) throw noSuchAccount(email);
    const records = await recordsOf(actingFor(actor, person.id), now, (release) => read(release.snapshot));
    await data.audit.record(
      { courseId: null, verb: 'records handed over', subject: `user:${person.id}`, details: { by: 'console' } },
      now,
    );
    return records;
  },
});

/**
 * Everything stored about the person whose queries these are, in one document: what they made, what was released to
 * them, what they did. Never unreleased work of others, and no secret (hashes stay here).
 */
async function recordsOf(data: ScopedData, now: Date, released: (release: Release) => unknown) {
  const person = await data.ownRecords.person();
  if (!person) throw notFound();
  const {
    emailNorm,
    preferences,
    mayCreateCourses,
    identities,
    sessions,
    calendarFeed,
    links,
    linksHandedBy,
    joinLinksMade,
    facesOffered,
    acts,
    ...about
  } = person;
  return {
    format: 'kerncrit own data 2',
    madeAt: now,
    person: { ...about, email: emailNorm, preferences: read(preferences), mayMakeCourses: mayCreateCourses },
    signIns: { identities, sessions, passwordLinks: links, calendarAddresses: calendarFeed ? [calendarFeed] : [] },
    courses: (await data.ownRecords.memberships()).map(({ course, section, accommodations, ...member }) => ({
      course: course.title,
      section: section?.name ?? null,
      ...member,
      accommodations: read(accommodations),
    })),
    drafts: (await data.ownRecords.drafts()).map(({ offsets, specimenVersion, changes, ...draft }) => ({
      line: specimenVersion.text,
      ...draft,
      offsets: read(offsets),
      changes: changes.map((change) => ({ ...change, offsets: read(change.offsets) })),
    })),
    proofs: (await data.ownRecords.proofs()).map(({ round, items, ...proof }) => ({
      exercise: round.exercise.title,
      round: round.number,
      ...proof,
      lines: items.map(({ specimenVersion, tracking, offsets }) => ({
        line: specimenVersion.text,
        tracking,
        offsets: read(offsets),
      })),
    })),
    releases: (await data.ownRecords.releases()).map((release) => ({
      exercise: release.round.exercise.title,
      round: release.round.number,
      number: release.number,
      releasedAt: release.releasedAt,
      seen: released(release),
    })),
    practice: (await data.practiceResults.own()).map(practiceResultView),
    demonstrations: (await data.demonstrations.own()).map(({ steps, specimenVersion, ...one }) => ({
      line: specimenVersion.text,
      ...one,
      ...(JSON.parse(steps) as object),
    })),
    written: await data.ownRecords.words(),
    taught: (await data.ownRecords.taught()).map(({ course, references, referenceSetItems, notes, ...rest }) => ({
      course: course.title,
      ...rest,
      references: references.map(readReference),
      referenceSetItems: referenceSetItems.map(readReference),
      notes: notes.map((note) => ({ ...note, suggestion: note.suggestion === null ? null : read(note.suggestion) })),
    })),
    made: { joinLinks: joinLinksMade, faces: facesOffered, passwordLinksHandedOver: linksHandedBy },
    acts,
  };
}

type Release = Awaited<ReturnType<ScopedData['ownRecords']['releases']>>[number];

function asShown({ snapshot, round }: Release): unknown {
  const { figuresHidden } = courseSettingsOf(round.exercise.course);
  return figuresHidden ? shownTo(z.parse(releaseSnapshotSchema, JSON.parse(snapshot)), true) : read(snapshot);
}

const read = (stored: string): unknown => JSON.parse(stored);

const readReference = <Row extends { offsets: string; tolerances: string; reasons: string }>({
  offsets,
  tolerances,
  reasons,
  ...rest
}: Row) => ({ ...rest, offsets: read(offsets), tolerances: read(tolerances), reasons: read(reasons) });
