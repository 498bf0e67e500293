import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { currentLines, lineView } from '@/lib/proof/current-lines';
import { preferencesSchema } from '@/shared/schemas/preferences';
import { benchSeat } from './bench-seat';
import { guidedLinePack } from './guided-line';
import { laidBeside } from './laid-beside';
import { offeredStart } from './offered-start';
import { builtInSpacing, spacingOf } from './spacing-of';

const id = z.string().check(z.minLength(1), z.maxLength(64));

/**
 * Opens the bench on one line: the line's pack, the actor's draft of it (made at the first opening) and what may lie beside it.
 * A student's draft is work, or with `trial` a trial of its own; staff always try. A trial is practice and never sent.
 * `start` offers a setting to begin from: another line of the same words by its specimen, or `trial`.
 * Errors: NOT_FOUND, also for a student before any round has opened.
 */
export const openBench = operation({
  name: 'open-bench',
  allow: 'draft:keep',
  input: z.strictObject({ exerciseId: id, specimenId: id, trial: z.optional(z.boolean()), start: z.optional(id) }),
  run: async (context, { exerciseId, specimenId, trial = false, start }) => {
    const { data, now } = context;
    const { seat, current, student, settings, accommodations, tells, personKey, exercise, course } = await benchSeat(
      context,
      exerciseId,
    );
    const lines = await currentLines(data, exerciseId);
    const place = lines.findIndex((one) => one.specimenId === specimenId);
    const line = lines[place];
    if (!line) throw notFound();
    const purpose = student && !trial ? 'work' : 'practice';
    const key = { memberId: seat.member.id, specimenVersionId: line.id, purpose } as const;
    const draft = await retryOnConflict(
      async () =>
        (await data.drafts.byKey(key)) ?? data.drafts.create(key, builtInSpacing(line.pack.letters.length - 1), now),
    );
    return {
      exercise,
      course,
      round: current && { number: current.number, dueAt: current.dueAt },
      purpose,
      /** A student's trial, from which the line itself can be started. */
      trial: student && trial,
      line: lineView(line),
      place: {
        index: place,
        of: lines.length,
        before: lines[place - 1]?.specimenId ?? null,
        after: lines[place + 1]?.specimenId ?? null,
      },
      /** How many lines of the exercise are of the same words, this one included. */
      together: lines.filter(({ text }) => text === line.text).length,
      draft: { id: draft.id, version: draft.version, spacing: spacingOf(draft) },
      start:
        start === undefined
          ? null
          : await offeredStart(data, { memberId: seat.member.id, line, lines, purpose }, start),
      smallestSize: settings.smallestSize,
      /** The guided line comes before the first bench of a student, once. */
      guided: student && (await isFirstVisit(data)) ? await guidedLinePack() : null,
      personKey,
      tells,
      accommodations,
      /** Where a teacher shows how this line was set. */
      demonstrations: await data.demonstrations.shownOf(line.specimenId),
      underlays: await laidBeside(context, { exerciseId, memberId: seat.member.id, line, trial: student && trial }),
    };
  },
});

async function isFirstVisit(data: ScopedData): Promise<boolean> {
  const preferences = await data.account.preferences();
  return preferences !== null && z.parse(preferencesSchema, JSON.parse(preferences)).guidedLine === undefined;
}
