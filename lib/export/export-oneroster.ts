import * as z from 'zod/mini';
import { Temporal } from 'temporal-polyfill';
import { operation } from '@/lib/access/operation';
import { roundInHand } from '@/lib/review/context';
import { env } from '@/lib/env';
import { roundByNumber } from '@/shared/schemas/critique';
import { releaseSnapshotSchema } from '@/shared/schemas/release';
import { gradebookSet } from './oneroster/gradebook';
import { zipSet } from './oneroster/zip-set';

/**
 * The marks of a round for machines: a OneRoster 1.2 set in one zip. Only what was released is a result, as it went out;
 * so a set is the same for everybody who asks, and gives away nothing of marking that is still under way.
 */
export const exportOneRoster = operation({
  name: 'export-oneroster',
  allow: 'marks:export',
  input: roundByNumber,
  run: async ({ data, now }, { exerciseId, roundNumber }) => {
    const { round, exercise, course } = await roundInHand(data, exerciseId, roundNumber);
    const [members, span, releases] = await Promise.all([
      data.exports.rosterOf(course.id),
      data.exports.spanOf(course.id),
      data.exports.newestReleases(round.id),
    ]);
    const people = members.flatMap(({ id, role, user }) =>
      user ? [{ memberId: id, userId: user.id, role, name: user.name, username: user.emailNorm }] : [],
    );
    const known = await data.exports.externalIds([
      'school',
      course.id,
      round.id,
      ...people.flatMap(({ memberId, userId }) => [memberId, userId]),
    ]);
    const dayOf = (at: Date): string => dayIn(course.timeZone, at);
    const lastDay = span.to && span.to > now ? span.to : now;
    const set = gradebookSet({
      school: new URL(env().publicOrigin).host,
      course,
      exercise,
      // The last day is outside the session: the standard's end is exclusive.
      session: { startDate: dayOf(span.from), endDate: dayAfter(dayOf(lastDay)) },
      round: {
        id: round.id,
        number: round.number,
        title: round.title,
        assignDate: dayOf(round.opensAt ?? exercise.publishedAt ?? exercise.createdAt),
        dueDate: dayOf(round.dueAt ?? lastDay),
      },
      people,
      results: releases.map(({ memberId, releasedAt, snapshot }) => {
        const { total } = z.parse(releaseSnapshotSchema, JSON.parse(snapshot));
        return { memberId, score: total.after, day: dayOf(releasedAt), late: total.late !== null };
      }),
      externalId: (kind, localId) => known.get(`${kind} ${localId}`) ?? null,
    });
    await data.audit.record(
      {
        courseId: course.id,
        verb: 'marks exported',
        subject: `round:${round.id}`,
        details: { as: 'OneRoster 1.2', results: set.results.length },
      },
      now,
    );
    return {
      zip: zipSet(set, { name: 'Kerncrit', code: new URL(env().publicOrigin).host }, now),
      name: `oneroster-round-${round.number}.zip`,
    };
  },
});

const dayIn = (zone: string, at: Date): string =>
  Temporal.Instant.fromEpochMilliseconds(at.getTime()).toZonedDateTimeISO(zone).toPlainDate().toString();
const dayAfter = (day: string): string => Temporal.PlainDate.from(day).add({ days: 1 }).toString();
