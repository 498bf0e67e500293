import * as z from 'zod';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { practiceResultView } from '@/lib/practice/practice-result-view';

/** Everything that is kept about the person, in one document: what they made, and what was released to them. */
export const exportOwnData = operation({
  name: 'export-own-data',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data, now }) => {
    const person = await data.ownRecords.person();
    if (!person) throw notFound();
    const { emailNorm, preferences, mayCreateCourses, identities, sessions, ...about } = person;
    return {
      format: 'kerncrit own data 1',
      madeAt: now,
      person: { ...about, email: emailNorm, preferences: JSON.parse(preferences) as unknown, mayMakeCourses: mayCreateCourses },
      signIns: { identities, sessions },
      courses: (await data.ownRecords.memberships()).map(({ course, section, accommodations, ...member }) => ({ course: course.title, section: section?.name ?? null, ...member, accommodations: JSON.parse(accommodations) as unknown })),
      drafts: (await data.ownRecords.drafts()).map(({ offsets, specimenVersion, ...draft }) => ({ line: specimenVersion.text, ...draft, offsets: JSON.parse(offsets) as unknown })),
      proofs: (await data.ownRecords.proofs()).map(({ round, items, ...proof }) => ({
        exercise: round.exercise.title, round: round.number, ...proof,
        lines: items.map(({ specimenVersion, tracking, offsets }) => ({ line: specimenVersion.text, tracking, offsets: JSON.parse(offsets) as unknown })),
      })),
      releases: (await data.ownRecords.releases()).map(({ round, snapshot, ...release }) => ({ exercise: round.exercise.title, round: round.number, ...release, seen: JSON.parse(snapshot) as unknown })),
      practice: (await data.practiceResults.own()).map(practiceResultView),
      demonstrations: (await data.demonstrations.own()).map(({ steps, specimenVersion, ...one }) => ({ line: specimenVersion.text, ...one, ...(JSON.parse(steps) as object) })),
      written: await data.ownRecords.words(),
    };
  },
});
