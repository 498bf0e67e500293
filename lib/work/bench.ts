import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { type Context, operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { DraftPurpose } from '@/lib/data/drafts';
import { retryOnConflict } from '@/lib/data/retry';
import { buildPack } from '@/lib/face/build-pack';
import { teaches } from '@/shared/schemas/course';
import { type CurrentLine, currentLines, lineView } from './lines';
import { sizeAndGroundOf } from '@/lib/reference/compare';
import { accommodationsOf, roundsAt } from './rounds';
import { visibleReferences } from '@/lib/reference/sets';
import { courseSettingsOf } from '@/lib/rows/course';
import { faceName } from '@/lib/rows/specimen';
import { whatTheBenchTells } from '@/shared/exercise/what-the-bench-tells';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import type { Pack } from '@/shared/schemas/pack';
import { preferencesSchema } from '@/shared/schemas/account';
import type { Spacing } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';
import { spacingOf } from '@/lib/rows/spacing';

const id = z.string().check(z.minLength(1), z.maxLength(64));

/**
 * Opens the bench on one line: the line's pack, the actor's draft of it (made at the first opening) and what may lie
 * beside it. A student's draft is work, or with `trial` a trial of its own; staff always try. A trial is practice and
 * never sent. `start` offers a setting to begin from: another line of the same words by its specimen, or `trial`.
 * Errors: NOT_FOUND, also for a student before any round has opened.
 */
export const openBench = operation({
  name: 'open-bench',
  allow: 'draft:keep',
  input: z.strictObject({ exerciseId: id, specimenId: id, trial: z.optional(z.boolean()), start: z.optional(id) }),
  run: async (context, { exerciseId, specimenId, trial = false, start }) => {
    const { data, now } = context;
    const { seat, current, student, settings, accommodations, tells, rulerOfOwn, personKey, exercise, course } =
      await benchSeat(context, exerciseId);
    const lines = await currentLines(data, exerciseId);
    const place = lines.findIndex((one) => one.specimenId === specimenId);
    const line = lines[place];
    if (!line) throw notFound();
    const purpose = student && !trial ? 'work' : 'trial';
    const key = { memberId: seat.member.id, specimenVersionId: line.id, purpose } as const;
    const draft = await retryOnConflict(
      async () => (await data.drafts.byKey(key)) ?? data.drafts.create(key, line.start, now),
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
      ofThisText: lines.filter(({ text }) => text === line.text).length,
      draft: { id: draft.id, version: draft.version, spacing: spacingOf(draft) },
      start:
        start === undefined
          ? null
          : await offeredStart(data, { memberId: seat.member.id, line, lines, purpose }, start),
      smallestSize: settings.smallestSize,
      /** The guided line precedes a student's first bench, once. */
      guided: student && (await isFirstVisit(data)) ? await guidedLinePack() : null,
      personKey,
      tells,
      rulerOfOwn,
      accommodations,
      /** Where an instructor shows how this line was set. */
      demonstrations: await data.demonstrations.shownOf(line.specimenId),
      overlays: await overlaysFor(context, { exerciseId, memberId: seat.member.id, line, trial: student && trial }),
    };
  },
});

async function isFirstVisit(data: ScopedData): Promise<boolean> {
  const preferences = await data.account.preferences();
  return preferences !== null && z.parse(preferencesSchema, JSON.parse(preferences)).guidedLine === undefined;
}

/**
 * The actor's access to an exercise's benches: the seat, the round, and how much a bench may show them now. Staff see
 * everything.
 * @throws NOT_FOUND, also for a student before any round has opened.
 */
export async function benchSeat({ data, now, actor }: Context, exerciseId: string) {
  const seat = await data.seats.atExercise(exerciseId);
  if (!seat || actor.kind !== 'person') throw notFound();
  const { current } = roundsAt(seat, now);
  const student = !teaches(seat.member.role);
  if (student && !current) throw notFound();
  const settings = z.parse(exerciseSettingsSchema, JSON.parse(seat.exercise.settings));
  const { figuresHidden } = courseSettingsOf(seat.course);
  const accommodations = accommodationsOf(seat.member);
  const proofs = await data.proofs.ofSeat(seat.member.id, exerciseId);
  const sent = current !== null && proofs.some(({ roundId }) => roundId === current.id);
  const told = (different: typeof accommodations) => whatTheBenchTells(settings, different, sent, figuresHidden);
  return {
    seat,
    current,
    student,
    settings,
    accommodations,
    personKey: actor.userId,
    figuresHidden: student && figuresHidden,
    tells: student ? told(accommodations).level : ('everything' as const),
    /** Others at this exercise have no gap ruler on their benches. */
    rulerOfOwn: student && told(accommodations).evenness && !told({}).evenness,
    exercise: { id: exerciseId, title: seat.exercise.title, state: seat.exercise.state },
    course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
  };
}

/**
 * The line of the first visit: two gaps that are plainly wrong, one of them to be found. Words and face are our own
 * choice.
 */
const text = 'HAVEN';
const face = 'source-serif-4-400';

let built: Promise<Pack> | undefined;

/** The pack of the guided line, built once per process. */
function guidedLinePack(): Promise<Pack> {
  built ??= buildPack({ kind: 'catalogue', key: face }, text).catch((error: unknown) => {
    built = undefined;
    throw error;
  });
  return built;
}

type Overlay = { id: string; label: string; spacing: Spacing; tolerances?: (number | null)[] };

/**
 * The overlays of a line on the bench: the last sent spacing, in a trial the line of the work, and references where
 * they may be seen.
 */
async function overlaysFor(
  context: Context,
  at: { exerciseId: string; memberId: string; line: CurrentLine; trial: boolean },
): Promise<Overlay[]> {
  return [
    ...(at.line.startMade === null ? [] : [{ id: 'began', label: 'As the line began', spacing: at.line.start }]),
    ...(await lastProof(context.data, at.memberId, at.line)),
    ...(at.trial ? await work(context.data, at.memberId, at.line) : []),
    ...(await references(context, at.exerciseId, at.line)),
  ];
}

async function lastProof(data: ScopedData, memberId: string, line: CurrentLine): Promise<Overlay[]> {
  const item = await data.proofs.lastItem(memberId, line.id);
  if (!item) return [];
  const { number, round } = item.proof;
  return [{ id: 'last-proof', label: `Proof ${number} of round ${round.number}`, spacing: spacingOf(item) }];
}

async function work(data: ScopedData, memberId: string, line: CurrentLine): Promise<Overlay[]> {
  const draft = await data.drafts.byKey({ memberId, specimenVersionId: line.id, purpose: 'work' });
  return draft ? [{ id: 'work', label: 'Your line, as it is now', spacing: spacingOf(draft) }] : [];
}

/** References, where the exercise lets this member see them now. */
async function references(context: Context, exerciseId: string, line: CurrentLine): Promise<Overlay[]> {
  const visible = (await visibleReferences(context, exerciseId)).get(line.id) ?? [];
  return visible.map(({ author, tracking, offsets, tolerances }, index) => ({
    id: `reference-${index + 1}`,
    label: `Reference by ${author}`,
    spacing: { tracking, offsets },
    tolerances,
  }));
}

type At = { memberId: string; line: CurrentLine; lines: readonly CurrentLine[]; purpose: DraftPurpose };

/**
 * A spacing of the same words as a start for this line: of another line of the exercise (by its specimen), or of their
 * trial of this one. The bench offers it, and nothing is replaced until it is accepted there. Null where there is none,
 * or where the words differ: offsets are copied by position.
 */
async function offeredStart(
  data: ScopedData,
  at: At,
  from: string,
): Promise<{ label: string; spacing: Spacing } | null> {
  const trial = from === 'trial';
  const source = trial ? at.line : at.lines.find(({ specimenId }) => specimenId === from);
  if (!source || source.text !== at.line.text || source.pack.letters.length !== at.line.pack.letters.length)
    return null;
  const purpose = trial ? 'trial' : at.purpose;
  if (source.id === at.line.id && purpose === at.purpose) return null;
  const draft = await data.drafts.byKey({ memberId: at.memberId, specimenVersionId: source.id, purpose });
  if (!draft) return null;
  const { size } = sizeAndGroundOf(source);
  return {
    label: trial ? 'Your trial of this line' : `${faceName(source.pack)}, ${withUnit(size.value, size.unit, 1)}`,
    spacing: spacingOf(draft),
  };
}
