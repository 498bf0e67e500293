import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import { retryOnConflict } from '@/lib/data/retry';
import type { Seat } from '@/lib/data/seats';
import { builtInSpacing, spacingOf } from '@/lib/draft/spacing-of';
import { announce } from '@/lib/live/announce';
import { settingsOf } from '@/lib/exercise/read-exercise';
import { frozenReferences } from '@/lib/reference/frozen-references';
import { sendProofSchema, type SendProof } from '@/shared/schemas/proof';
import { currentLines } from './current-lines';
import { latenessOf, roundsAt, type SeatRound } from './member-rounds';
import { measureProofLine } from './measure-proof-line';
import { receiptOf, type Receipt } from './receipt';

/**
 * Sends a proof of an exercise: every line as its draft stands, measured here and now by the code that ran on the bench.
 * Sent again with the same request key it gives the same receipt and makes nothing new.
 * Errors: NOT_FOUND; CONFLICT when a draft has moved on since the sender looked, or the round takes no proofs.
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
      if (before) return receiptAgain(seat, before);
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
      return receiptOf({ ...sent, receivedAt: now, lines: lines.measured.length }, round, latenessOf(round, now));
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
    const spacing = draft ? spacingOf(draft) : builtInSpacing(pack.letters.length - 1);
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

function receiptAgain(seat: Seat, before: { id: string; number: number; receivedAt: Date; roundId: string }): Receipt {
  const round = roundsAt(seat, before.receivedAt).rounds.find(({ id }) => id === before.roundId);
  if (!round) throw notFound();
  return receiptOf({ ...before, lines: null }, round, latenessOf(round, before.receivedAt));
}
