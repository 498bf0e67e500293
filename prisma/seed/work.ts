import type { Caller } from '@/lib/access/caller';
import { openBench } from '@/lib/work/bench';
import { saveDraft } from '@/lib/work/drafts';
import { sendProof } from '@/lib/work/proofs';
import { getWork } from '@/lib/work/overview';
import { measureLine } from '@/shared/scoring';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import { reasonings } from './work-words';
import { localInstant } from './local-instant';
import { straying } from './straying';

const hour = 3_600_000;

/**
 * How an invented student's hand goes: `share` of the way that the measure points, `wander` thousandths of an em either
 * side of it, `habit` on every gap alike; `blind`: kinds of side that this hand does not see yet.
 */
type Hand = { share: number; wander: number; habit: number; blind: readonly string[] };

const hands: readonly Hand[] = [
  { share: 0.85, wander: 4, habit: -4, blind: [] },
  { share: 0.4, wander: 8, habit: 6, blind: ['slanted-in', 'slanted-out'] },
  { share: 0.7, wander: 10, habit: -16, blind: [] },
  { share: 0.6, wander: 6, habit: 0, blind: ['open'] },
  { share: 0.2, wander: 5, habit: -8, blind: ['round'] },
  { share: 1.1, wander: 12, habit: 2, blind: [] },
];

/** Round 1: all but the last two send; one sends twice, one is late, and two send the very same. */
export async function seedFirstRound({ exerciseId, studentIds, timeZone }: Seats, now: Date): Promise<void> {
  const sending = studentIds.slice(0, Math.max(1, studentIds.length - 2));
  for (const [index, userId] of sending.entries()) {
    // The last of them has looked over the shoulder of the first.
    const like = index === sending.length - 1 && index > 0 ? 0 : index;
    // The round was due at six in the evening, five days ago.
    const at =
      index === 3 ? localInstant(now, timeZone, -5, '23:00') : new Date(now.getTime() - (6 + (index % 9)) * 24 * hour);
    await setLines(userId, exerciseId, { ...hands[like % hands.length]!, seed: 100 + like }, at);
    if (index === 2) await send(userId, exerciseId, 'first-thoughts', index + 1, new Date(at.getTime() - hour));
    await send(userId, exerciseId, 'round-1', index, at);
  }
}

/** Round 2: a third of them have been at it again, each nearer than before. */
export async function seedSecondRound({ exerciseId, studentIds }: Seats, now: Date): Promise<void> {
  for (const [index, userId] of studentIds.slice(0, Math.ceil(studentIds.length / 3)).entries()) {
    const hand = hands[index % hands.length]!;
    const at = new Date(now.getTime() - (2 + index) * 7 * hour);
    await setLines(
      userId,
      exerciseId,
      { ...hand, share: (hand.share + 1) / 2, wander: hand.wander / 2, blind: [], seed: 300 + index },
      at,
    );
    await send(userId, exerciseId, 'round-2', index + 3, at);
  }
}

type Seats = { exerciseId: string; studentIds: readonly string[]; timeZone: string };

async function setLines(userId: string, exerciseId: string, hand: Hand & { seed: number }, at: Date): Promise<void> {
  const { lines } = await getWork(person(userId), { exerciseId }, { now: at });
  for (const [place, { specimenId }] of lines.entries()) {
    const { draft, line } = await openBench(person(userId), { exerciseId, specimenId }, { now: at });
    const spacing = setByHand(line.pack, line.size, line.ground, { ...hand, seed: hand.seed * 31 + place });
    await saveDraft(
      person(userId),
      { draftId: draft.id, baseVersion: draft.version, clientId: `demo-${at.getTime()}`, seq: 1, spacing },
      { now: at },
    );
  }
}

/** Some of the way to the line's own centre, with what this hand adds and leaves out. */
function setByHand(pack: Pack, size: Size, ground: Ground, hand: Hand & { seed: number }): Spacing {
  const builtIn = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
  const stray = straying(hand.seed, hand.wander);
  const offsets = measureLine(pack, builtIn, { size, ground }).pairs.map(({ sides, suggestion, wordSpace }) => {
    if (wordSpace > 0) return 0;
    const seen = !hand.blind.includes(sides.left) && !hand.blind.includes(sides.right);
    return Math.round((seen ? (suggestion ?? 0) * hand.share : 0) + stray());
  });
  return { tracking: hand.habit, offsets };
}

async function send(userId: string, exerciseId: string, requestKey: string, words: number, at: Date): Promise<void> {
  await sendProof(
    person(userId),
    { exerciseId, requestKey: `demo-${requestKey}`, reasoning: reasonings[words % reasonings.length]!, zoom: 1 },
    { now: at },
  );
}

const person = (userId: string): Caller => ({ kind: 'person', userId, sessionId: 'demo', address: 'demo' });
