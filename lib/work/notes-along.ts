import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/rows/spacing';
import { unchangedIn } from '@/shared/critique/run';

type Sent = { roundId: string; memberId: string; proofId: string };

/**
 * Notes on what a student left unchanged go along to the proof that counts now; all others stay on the proof they were
 * written on. A note on the whole line goes only where nothing in it has changed. Notes that were withdrawn, that a
 * release shows, or on a proof that was singled out, stay. Called again it does nothing more.
 */
export async function notesGoAlong(data: ScopedData, to: Sent): Promise<void> {
  const notes = await data.notes.onOtherProofs(to);
  if (notes.length === 0) return;
  const items = new Map((await data.notes.itemsOf(to.proofId)).map((item) => [item.specimenVersionId, item]));
  for (const { id, proofItem, fromPair, toPair, task } of notes) {
    const item = items.get(proofItem.specimenVersionId);
    if (!item || !unchangedIn(fromPair, toPair, spacingOf(proofItem), spacingOf(item))) continue;
    // A note of the second marking keeps its task, so that the first marker still can't read it.
    await data.notes.moveTo(id, item.id, { keepTask: task?.slot === 'second' });
  }
}
