import ical, { ICalCalendarMethod } from 'ical-generator';
import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import { hashToken, newToken } from './token';
import { addressOf, countTry } from './tries';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { env } from '@/lib/env';
import { ownRound } from '@/lib/work/rounds';
import { linkTokenSchema } from '@/shared/schemas/account';
import { teaches } from '@/shared/schemas/course';

/** Whether the person has a calendar address, and since when. The address itself can't be shown again. */
export const getCalendarFeed = operation({
  name: 'get-calendar-feed',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data }) => ({ since: (await data.calendars.own())?.createdAt ?? null }),
});

/** Makes the secret address of one's own calendar; one made before ends. It can be read only now. */
export const makeCalendarFeed = operation({
  name: 'make-calendar-feed',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data, actor, now }) => {
    if (actor.kind !== 'person') throw notFound();
    const token = newToken();
    await retryOnConflict(() => data.calendars.make(actor.userId, hashToken(token), now));
    return { path: `/api/calendar/${token}` };
  },
});

/** Ends the address: calendars that read it get nothing any more. */
export const revokeCalendarFeed = operation({
  name: 'revoke-calendar-feed',
  allow: 'account:own',
  input: z.object({}),
  run: async ({ data }) => {
    await data.calendars.revoke();
    return {};
  },
});

/**
 * A person's dates as a calendar (iCalendar, RFC 5545), for whoever holds its address: when rounds open and are due for
 * them; for staff also for each section with its own dates. Titles of courses and exercises, and no person's name.
 */
export const readCalendarFeed = operation({
  name: 'read-calendar-feed',
  allow: 'open',
  input: z.object({ token: linkTokenSchema }),
  run: async ({ data, caller }, { token }) => {
    const memberships = await data.calendars.byAddress(hashToken(token));
    if (memberships === null) {
      // Only addresses that lead nowhere are counted: calendars ask often.
      await countTry(data, 'link-address', addressOf(caller));
      throw notFound();
    }
    const origin = env().publicOrigin;
    const calendar = ical({
      name: 'Kerncrit',
      prodId: { company: 'Kerncrit', product: 'Dates', language: 'EN' },
      method: ICalCalendarMethod.PUBLISH,
      ttl: 60 * 60,
    });
    for (const { uid, at, what, exercise, course } of memberships.flatMap(datesOf)) {
      const url = `${origin}/exercises/${exercise.id}`;
      calendar.createEvent({
        id: `${uid}@${new URL(origin).hostname}`,
        start: at,
        summary: `${exercise.title}: ${what}`,
        description: `${course.title}\n${url}`,
        url,
        // Not the time of the request: the same dates give the same calendar. No SEQUENCE: a program that subscribes takes
        // the whole anew, and nothing here only ever rises (an extension that ended is gone).
        stamp: exercise.publishedAt ?? exercise.createdAt,
      });
    }
    return { text: calendar.toString() };
  },
});

type Membership = NonNullable<Awaited<ReturnType<ScopedData['calendars']['byAddress']>>>[number];
type Exercise = Membership['exercises'][number];
type Entry = {
  /** The same for the same thing, whenever it is. */
  uid: string;
  at: Date;
  what: string;
  exercise: Exercise;
  course: Membership['course'];
};

function datesOf({ member, course, exercises }: Membership): Entry[] {
  return exercises.flatMap((exercise) =>
    exercise.rounds.flatMap((round): Entry[] => {
      const name = round.title ? `round ${round.number}, ${round.title}` : `round ${round.number}`;
      const entry = (key: string, at: Date | null, what: string): Entry[] =>
        at === null ? [] : [{ uid: `${round.id}-${key}`, at, what: `${name} ${what}`, exercise, course }];
      if (!teaches(member.role)) {
        const own = ownRound({ ...round, exercise }, member);
        return [...entry('opens', dateOf(own.opensAt), 'opens'), ...entry('due', dateOf(own.dueAt), 'is due')];
      }
      return [
        ...entry('opens', round.opensAt, 'opens'),
        ...entry('due', round.dueAt, 'is due'),
        ...round.sections.flatMap(({ sectionId, section, opensAt, dueAt }) => [
          ...entry(`opens-${sectionId}`, opensAt, `opens for ${section.name}`),
          ...entry(`due-${sectionId}`, dueAt, `is due for ${section.name}`),
        ]),
      ];
    }),
  );
}

const dateOf = (at: number | null): Date | null => (at === null ? null : new Date(at));
