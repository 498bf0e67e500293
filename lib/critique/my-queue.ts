import { notFound } from '@/lib/access/errors';
import type { ScopedData } from '@/lib/data';
import type { InOrder, QueueOrder } from './queue-order';
import type { RoundInHand } from './round-in-hand';

export type SectionOfQueue = { id: string; name: string; sent: number };

/** The queue as one marker goes through it. */
export type MyQueue = Pick<QueueOrder, 'counted' | 'placeOf'> & {
  /** Proofs that this marker has put off: they come last, for nobody else. */
  skipped: ReadonlySet<string>;
  section: SectionOfQueue | null;
};

type Hand = Pick<RoundInHand, 'round' | 'course' | 'settings' | 'me'>;

/** The round's order, or the part of it that a section has sent, with what this marker skipped at the end. @throws NOT_FOUND for a section that may not be told apart. */
export async function myQueue(
  data: ScopedData,
  hand: Hand,
  order: QueueOrder,
  sectionId: string | null,
): Promise<MyQueue> {
  const [skips, part] = await Promise.all([
    data.markSkips.of(hand.round.id, hand.me.id),
    sectionId === null ? null : sectionPart(data, hand, sectionId),
  ]);
  if (skips.length === 0 && part === null) return { ...order, skipped: new Set(), section: null };
  const ofPart = part === null ? order.counted : order.counted.filter(({ memberId }) => part.members.has(memberId));
  const skipped = new Map(skips.map(({ proofId }, place) => [proofId, place]));
  const last = (one: InOrder) => skipped.get(one.proofId) ?? -1;
  const counted = ofPart.toSorted((one, other) => last(one) - last(other));
  return {
    counted,
    skipped: new Set(skipped.keys()),
    section: part?.section ?? null,
    placeOf: new Map(
      counted.flatMap(({ proofId, alias }, place) => [
        [proofId, place],
        [alias, place],
      ]),
    ),
  };
}

async function sectionPart(
  data: ScopedData,
  hand: Hand,
  sectionId: string,
): Promise<{ section: SectionOfQueue; members: ReadonlySet<string> }> {
  const section = (await sectionsOf(data, hand)).find(({ id }) => id === sectionId);
  if (!section) throw notFound();
  return { section, members: new Set(await data.sections.memberIds(hand.course.id, sectionId)) };
}

/** Where names are hidden, a part of the queue with fewer in it would say too much of who they are. */
const fewestHidden = 5;

/** The sections by which the queue can be gone through; none where names are hidden and one of the parts is very small. */
export async function sectionsOf(data: ScopedData, { round, course, settings }: Hand): Promise<SectionOfQueue[]> {
  const parts = await data.sections.sentIn(course.id, round.id);
  if (settings.namesHidden && parts.some(({ sent }) => sent < fewestHidden)) return [];
  const named = parts.flatMap(({ id, name, sent }) => (id === null || name === null ? [] : [{ id, name, sent }]));
  return parts.length > 1 ? named.toSorted((one, other) => (one.name < other.name ? -1 : 1)) : [];
}
