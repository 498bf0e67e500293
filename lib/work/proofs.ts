import * as z from 'zod/mini';
import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import type { Seat } from '@/lib/data/seats';
import { announce } from '@/lib/live/announce';
import { frozenReferences } from '@/lib/reference/sets';
import { settingsOf } from '@/lib/rows/exercise';
import { wrongStartOf } from '@/lib/rows/specimen';
import { spacingOf } from '@/lib/rows/spacing';
import { countedProof, standingOf } from '@/shared/marking/marks';
import { packSchema } from '@/shared/schemas/pack';
import { type SendProof, sendProofSchema } from '@/shared/schemas/proof';
import { measureProofLine, sizeAndGroundOf } from '@/lib/reference/compare';
import { latenessOf, lateWords, type Receipt, receiptOf, roundFor, roundsAt, type SeatRound } from './rounds';
import { currentLines } from './lines';
import { notesGoAlong } from './notes-along';

/**
 * Sends a proof of an exercise: every line as in its draft, measured now by the same code as on the bench; a line that
 * can't be measured is sent without figures. Sent again with the same request key it gives the same receipt and makes
 * nothing new. Errors: NOT_FOUND; CONFLICT when a draft has changed since the sender looked, or the round takes no
 * proofs.
 */
export const sendProof = operation({
  name: 'send-proof',
  allow: 'proof:send',
  input: sendProofSchema,
  run: ({ data, now }, input): Promise<Receipt> =>
    retryOnConflict(async () => {
      const seat = await data.seats.atExercise(input.exerciseId);
      if (!seat) throw notFound();
      const before = await data.proofs.byRequestKey(seat.member.id, input.requestKey);
      if (before) return receiptAgain(data, seat, before);
      const round = openRound(seat, now);
      const lines = await measuredLines(data, seat, input);
      const sent = await data.proofs.send({
        roundId: round.id,
        memberId: seat.member.id,
        requestKey: input.requestKey,
        reasoning: input.reasoning,
        zoom: input.zoom,
        referenceSetId: lines.referenceSetId,
        lines: lines.measured,
        now,
      });
      announce(`round:${round.id}`);
      const { counts, critiqueBegun } = await standing(data, { ...round, memberId: seat.member.id }, sent.id);
      if (counts === 'counts' && critiqueBegun)
        await notesGoAlong(data, { roundId: round.id, memberId: seat.member.id, proofId: sent.id });
      return receiptOf(
        { ...sent, receivedAt: now, lines: lines.measured.length, counts: counts === 'counts', critiqueBegun },
        round,
        latenessOf(round, now),
      );
    }),
});

function openRound(seat: Seat, now: Date): SeatRound {
  const { current, next } = roundsAt(seat, now);
  if (seat.exercise.state !== 'published')
    throw new AppError('CONFLICT', 'This exercise is closed, so it takes no more proofs. Your spacings are kept.');
  if (!current) {
    const when = next?.opensAt ? 'Its first round has not opened yet.' : 'No round of it is open yet.';
    throw new AppError('CONFLICT', `${when} Your spacings are kept; send the proof when the round is open.`);
  }
  if (!latenessOf(current, now).accepted) {
    throw new AppError(
      'CONFLICT',
      `Round ${current.number} was due and its rule takes no proofs any more. Your spacings are kept; ask your instructor if there was a reason.`,
    );
  }
  return current;
}

async function measuredLines(data: ScopedData, seat: Seat, input: SendProof) {
  const versions = await currentLines(data, seat.exercise.id);
  if (versions.length === 0)
    throw new AppError('CONFLICT', 'This exercise has no lines yet, so there is nothing to send.');
  const [drafts, set] = await Promise.all([
    data.drafts.ofMember(
      seat.member.id,
      versions.map(({ id }) => id),
    ),
    data.referenceSets.latest(seat.exercise.id),
  ]);
  const draftOf = new Map(drafts.map((draft) => [draft.specimenVersionId, draft]));
  refuseUnseen(input.drafts, draftOf);
  const references = frozenReferences(set?.items ?? [], seat.exercise.settings);
  const { smallestSize } = settingsOf(seat.exercise);
  const measured = versions.map(({ pack, ...version }) => {
    const draft = draftOf.get(version.id);
    const spacing = draft ? spacingOf(draft) : version.start;
    return measureProofLine(version, pack, spacing, references.get(version.id) ?? [], smallestSize);
  });
  return { measured, referenceSetId: set?.id ?? null };
}

/** What was on the sender's screen must be what is sent. */
function refuseUnseen(seen: SendProof['drafts'], drafts: ReadonlyMap<string, { version: number }>): void {
  const moved = Object.entries(seen ?? {}).filter(([id, version]) => (drafts.get(id)?.version ?? 0) !== version);
  if (moved.length === 0) return;
  const lines = moved.length === 1 ? 'One line has' : `${moved.length} lines have`;
  throw new AppError(
    'CONFLICT',
    `${lines} changed since this page was opened, perhaps in another tab or on another device. Look at them once more, then send; your sentence is kept.`,
  );
}

type RoundOfMember = { id: string; markingStartedAt: Date | null; memberId: string };

/**
 * How a proof stands in its round: it counts, a later one replaced it, or it came when another counted for good and is
 * kept. `critiqueBegun`: notes or marks were given on an earlier proof of the round.
 */
async function standing(data: ScopedData, { id, memberId, markingStartedAt }: RoundOfMember, proofId: string) {
  const { proofs, choice } = await data.proofs.inRound(id, memberId);
  const { proof, tooLate } = countedProof(proofs, markingStartedAt, choice);
  const number = proofs.find((one) => one.id === proofId)?.number ?? 0;
  return {
    counts: standingOf(proofId, { proof, tooLate }),
    critiqueBegun: proofs.some((one) => one.number < number && one.said),
  };
}

async function receiptAgain(
  data: ScopedData,
  seat: Seat,
  before: { id: string; number: number; receivedAt: Date; roundId: string },
): Promise<Receipt> {
  const round = roundsAt(seat, before.receivedAt).rounds.find(({ id }) => id === before.roundId);
  if (!round) throw notFound();
  const { counts, critiqueBegun } = await standing(data, { ...round, memberId: seat.member.id }, before.id);
  // A lost answer may have left the notes behind.
  if (counts === 'counts' && critiqueBegun)
    await notesGoAlong(data, { roundId: round.id, memberId: seat.member.id, proofId: before.id });
  return receiptOf(
    { ...before, lines: null, counts: counts === 'counts', critiqueBegun },
    round,
    latenessOf(round, before.receivedAt),
  );
}

/**
 * A proof as it was sent: the receipt and each line. To its sender, and to the staff of the course. Without
 * measurements; what was released comes with the release.
 */
export const getProof = operation({
  name: 'get-proof',
  allow: 'proof:see',
  input: z.strictObject({ proofId: z.string().check(z.minLength(1), z.maxLength(64)) }),
  run: async ({ data, actor }, { proofId }) => {
    const proof = await data.proofs.byId(proofId);
    if (!proof) throw notFound();
    const { exercise } = proof.round;
    const extendedTo = proof.member.extensions.find(({ roundId }) => roundId === proof.roundId)?.dueAt ?? null;
    const round = roundFor(proof.round, {
      publishedAt: exercise.publishedAt,
      sectionId: proof.member.sectionId,
      accommodations: proof.member.accommodations,
      extendedTo,
    });
    return {
      id: proof.id,
      mine: actor.kind === 'person' && proof.member.userId === actor.userId,
      number: proof.number,
      round: { number: proof.round.number, title: proof.round.title },
      receivedAt: proof.receivedAt.toISOString(),
      late: lateWords(latenessOf(round, proof.receivedAt)),
      ...(await standing(data, { ...round, memberId: proof.memberId }, proof.id)),
      reasoning: proof.reasoning,
      zoom: proof.zoom,
      exercise: { id: exercise.id, title: exercise.title },
      course: { id: exercise.course.id, title: exercise.course.title, timeZone: exercise.course.timeZone },
      lines: proof.items
        .toSorted((one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position)
        .map(({ id, specimenVersion: version, measurements, ...item }) => ({
          itemId: id,
          measured: measurements.length > 0,
          specimenId: version.specimen.id,
          specimenVersionId: version.id,
          text: version.text,
          began: wrongStartOf(version)?.spacing,
          pack: z.parse(packSchema, JSON.parse(version.pack.payload)),
          spacing: spacingOf(item),
          ...sizeAndGroundOf(version),
        })),
    };
  },
});
