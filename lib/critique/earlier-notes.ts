import type { ScopedData } from '@/lib/data';
import { spacingOf } from '@/lib/draft/spacing-of';
import { followPair } from '@/shared/critique/follow-pair';
import type { EarlierNote } from '@/shared/critique/desk';
import { pairChange } from '@/shared/critique/pair-change';
import { standingBody } from '@/shared/critique/standing-body';
import type { Spacing } from '@/shared/schemas/spacing';
import { noteView } from './note-view';
import { pairMapOf } from './stored';

type Where = {
  /** Settings of earlier rounds. */ proofItemIds: readonly string[];
  specimenId: string;
  versionId: string;
};

/** What was said on this line in the rounds before, held against how it is set now. */
export async function earlierNotes(data: ScopedData, where: Where, now: Spacing): Promise<EarlierNote[]> {
  if (where.proofItemIds.length === 0) return [];
  const [notes, mapsFrom] = await Promise.all([
    data.notes.ofEarlier(where.proofItemIds),
    mapsTo(data, where.specimenId, where.versionId),
  ]);
  return notes.map((note) => {
    const { id, fromPair, toPair, suggestion, entries } = noteView(note, true);
    const then = spacingOf(note.proofItem);
    const since = mapsFrom(note.proofItem.specimenVersionId);
    const pairs =
      fromPair === null || toPair === null
        ? []
        : Array.from({ length: toPair - fromPair + 1 }, (_, index) => fromPair + index);
    const changes = pairs.map((pair, index) =>
      pairChange(pair, then, now, followPair(pair, since), suggestion?.[index] ?? null),
    );
    return { id, round: note.proofItem.proof.round.number, body: standingBody(entries), fromPair, toPair, changes };
  });
}

/** The pair maps that lead from any version of a specimen to `versionId`, oldest first. */
export async function mapsTo(
  data: ScopedData,
  specimenId: string,
  versionId: string,
): Promise<(from: string) => (number | null)[][]> {
  const versions = await data.critique.versionsOf(specimenId);
  const place = new Map(versions.map(({ id }, index) => [id, index]));
  // The map of a version leads from the one before it to it.
  const maps = versions.map((version) => pairMapOf(version) ?? []);
  return (fromId) => {
    const from = place.get(fromId) ?? 0;
    return maps.slice(from + 1, (place.get(versionId) ?? from) + 1);
  };
}
