import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation, type Context } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import { currentLines, lineView, type CurrentLine } from '@/lib/proof/current-lines';
import { accommodationsOf, roundsAt } from '@/lib/proof/member-rounds';
import { visibleReferences } from '@/lib/reference/visible-references';
import { whatTheBenchTells } from '@/shared/exercise/what-the-bench-tells';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import { preferencesSchema } from '@/shared/schemas/preferences';
import type { Spacing } from '@/shared/schemas/spacing';
import { guidedLinePack } from './guided-line';
import { builtInSpacing, spacingOf } from './spacing-of';

const id = z.string().check(z.minLength(1), z.maxLength(64));

/**
 * Opens the bench on one line: the line's pack, the actor's draft of it (made at the first opening) and what may lie beside it.
 * A student's draft is work; staff try a line in a draft of their own, which is practice and never sent.
 * Errors: NOT_FOUND, also for a student before any round has opened.
 */
export const openBench = operation({
  name: 'open-bench',
  allow: 'draft:keep',
  input: z.strictObject({ exerciseId: id, specimenId: id }),
  run: async (context, { exerciseId, specimenId }) => {
    const { data, now, actor } = context;
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat || actor.kind !== 'person') throw notFound();
    const { current } = roundsAt(seat, now);
    const student = seat.member.role === 'student';
    if (student && !current) throw notFound();
    const lines = await currentLines(data, exerciseId);
    const place = lines.findIndex((one) => one.specimenId === specimenId);
    const line = lines[place];
    if (!line) throw notFound();
    const key = { memberId: seat.member.id, specimenVersionId: line.id, purpose: student ? 'work' : 'practice' } as const;
    const draft = await retryOnConflict(async () =>
      (await data.drafts.byKey(key)) ?? data.drafts.create(key, builtInSpacing(line.pack.letters.length - 1), now));
    const settings = z.parse(exerciseSettingsSchema, JSON.parse(seat.exercise.settings));
    const accommodations = accommodationsOf(seat.member);
    const proofs = await data.proofs.ofSeat(seat.member.id, exerciseId);
    const sent = current !== null && proofs.some(({ roundId }) => roundId === current.id);
    return {
      exercise: { id: exerciseId, title: seat.exercise.title, state: seat.exercise.state },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      round: current && { number: current.number, dueAt: current.dueAt },
      purpose: key.purpose,
      line: lineView(line),
      place: { index: place, of: lines.length, before: lines[place - 1]?.specimenId ?? null, after: lines[place + 1]?.specimenId ?? null },
      draft: { id: draft.id, version: draft.version, spacing: spacingOf(draft) },
      /** The guided line comes before the first bench of a student, once. */
      guided: student && (await isFirstVisit(data)) ? await guidedLinePack() : null,
      personKey: actor.userId,
      tells: student ? whatTheBenchTells(settings, accommodations, sent).level : 'everything' as const,
      accommodations,
      underlays: [...await lastProof(data, seat.member.id, line), ...await references(context, exerciseId, line)],
    };
  },
});

async function isFirstVisit(data: ScopedData): Promise<boolean> {
  const preferences = await data.account.preferences();
  return preferences !== null && z.parse(preferencesSchema, JSON.parse(preferences)).guidedLine === undefined;
}

type Laid = { id: string; label: string; spacing: Spacing; tolerances?: (number | null)[] };

/** The setting last sent, to be laid beside the one being made. */
async function lastProof(data: ScopedData, memberId: string, line: CurrentLine): Promise<Laid[]> {
  const item = await data.proofs.lastItem(memberId, line.id);
  if (!item) return [];
  const { number, round } = item.proof;
  return [{ id: 'last-proof', label: `Proof ${number} of round ${round.number}`, spacing: spacingOf(item) }];
}

/** References, where the exercise lets this member see them now. */
async function references(context: Context, exerciseId: string, line: CurrentLine): Promise<Laid[]> {
  const visible = (await visibleReferences(context, exerciseId)).get(line.id) ?? [];
  return visible.map(({ author, tracking, offsets, tolerances }, index) =>
    ({ id: `reference-${index + 1}`, label: `Reference by ${author}`, spacing: { tracking, offsets }, tolerances }));
}
