import * as z from 'zod/mini';
import { notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/rows/spacing';
import { countedProof, type Standing, standingOf } from '@/shared/marking/marks';
import { isUntouched } from '@/shared/exercise/line-start';
import { teaches } from '@/shared/schemas/course';
import { exerciseSettingsSchema } from '@/shared/schemas/exercise';
import { currentLines, lineView } from './lines';
import { latenessOf, lateWords, roundsAt, type SeatRound } from './rounds';

/**
 * The student's view of an exercise: the brief, the rounds, each line as it is in the draft, and what was sent. Errors:
 * NOT_FOUND.
 */
export const getWork = operation({
  name: 'get-work',
  allow: 'exercise:see',
  input: z.strictObject({ exerciseId: z.string().check(z.minLength(1), z.maxLength(64)) }),
  run: async ({ data, now, actor }, { exerciseId }) => {
    const seat = await data.seats.atExercise(exerciseId);
    if (!seat || actor.kind !== 'person') throw notFound();
    const { rounds, current, next } = roundsAt(seat, now);
    const open = current !== null || teaches(seat.member.role);
    const lines = open ? await currentLines(data, exerciseId) : [];
    const drafts = new Map(
      (
        await data.drafts.ofMember(
          seat.member.id,
          lines.map(({ id }) => id),
        )
      ).map((draft) => [draft.specimenVersionId, draft]),
    );
    const proofs = await data.proofs.ofSeat(seat.member.id, exerciseId);
    const standings = await standingsOf(data, seat.member.id, rounds, proofs);
    const lastSent = proofs[0]?.receivedAt.getTime() ?? 0;
    const demonstrations = open ? await data.demonstrations.titlesOf(exerciseId) : [];
    const settings = z.parse(exerciseSettingsSchema, JSON.parse(seat.exercise.settings));
    return {
      /** Keeps this person's journal apart on a shared computer. */
      personKey: actor.userId,
      exercise: {
        id: exerciseId,
        title: seat.exercise.title,
        brief: seat.exercise.brief,
        state: seat.exercise.state,
        safetySigns: settings.safetySigns,
      },
      course: { id: seat.course.id, title: seat.course.title, timeZone: seat.course.timeZone },
      rounds: rounds.map((round) => roundView(round)),
      current: current && {
        ...roundView(current),
        takesProofs: seat.exercise.state === 'published' && latenessOf(current, now).accepted,
        lateNow: lateWords(latenessOf(current, now)),
      },
      next: next && roundView(next),
      lines: lines.map((line) => {
        const draft = drafts.get(line.id);
        const spacing = draft ? spacingOf(draft) : line.start;
        return {
          ...lineView(line),
          spacing,
          untouched: isUntouched(spacing, line.start),
          draftId: draft?.id ?? null,
          draftVersion: draft?.version ?? 0,
          changedSinceSent: draft !== undefined && draft.version > 0 && draft.updatedAt.getTime() > lastSent,
        };
      }),
      /** Demonstrations that instructors have recorded and shown. */
      demonstrations: demonstrations.map(({ id, title, specimenVersion }) => ({
        id,
        title,
        line: specimenVersion.text,
      })),
      proofs: proofs.map(({ id, number, receivedAt, reasoning, round }) => ({
        id,
        number,
        round: round.number,
        receivedAt: receivedAt.toISOString(),
        reasoning,
        counts: standings.get(id)!,
      })),
    };
  },
});

/** How each of a member's own proofs stands in its round. */
async function standingsOf(
  data: ScopedData,
  memberId: string,
  rounds: readonly SeatRound[],
  proofs: readonly { id: string; roundId: string }[],
): Promise<ReadonlyMap<string, Standing>> {
  const sentIn = rounds.filter(({ id }) => proofs.some(({ roundId }) => roundId === id));
  const counted = await Promise.all(
    sentIn.map(async ({ id, markingStartedAt }) => {
      const { proofs: own, choice } = await data.proofs.inRound(id, memberId);
      const among = countedProof(own, markingStartedAt, choice);
      return own.map((proof) => [proof.id, standingOf(proof.id, among)] as const);
    }),
  );
  return new Map(counted.flat());
}

export type Work = Awaited<ReturnType<typeof getWork>>;

const iso = (instant: number | null): string | null => (instant === null ? null : new Date(instant).toISOString());

const roundView = (round: SeatRound) => ({
  number: round.number,
  title: round.title,
  opensAt: iso(round.opensAt),
  dueAt: iso(round.dueAt),
  released: round.releasedToMember,
  markingStarted: round.markingStartedAt !== null,
  lateRule: {
    accept: round.lateRule.accept,
    untilAt: round.lateRule.untilAt,
    deductPerDay: round.lateRule.deductPerDay,
  },
});
