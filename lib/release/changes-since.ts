import type { ScopedData } from '@/lib/data';
import { pairMapOf, spacingOf } from '@/lib/rows/spacing';
import { followPair, pairChange, type PairChange } from '@/shared/critique/pair-change';
import type { ReleaseSnapshot } from '@/shared/schemas/release';

/** How the pairs of each note on a line have moved since, in the student's draft as it stands. By note id. */
export type LineSince = { specimenVersionId: string; notes: Record<string, PairChange[]> };

type SentProof = NonNullable<Awaited<ReturnType<ScopedData['proofs']['byId']>>>;

/** Holds each released note against the student's present draft; lines without a draft are left out. */
export async function changesSince(
  data: ScopedData,
  proof: SentProof,
  snapshot: ReleaseSnapshot,
): Promise<LineSince[]> {
  const items = new Map(proof.items.map((item) => [item.specimenVersionId, item]));
  const specimenIds = proof.items.map(({ specimenVersion }) => specimenVersion.specimenId);
  const [drafts, versions] = await Promise.all([
    data.releases.ownDrafts(proof.memberId, specimenIds),
    data.releases.ownVersions(specimenIds),
  ]);
  return snapshot.lines.flatMap(({ specimenVersionId, notes }) => {
    const item = items.get(specimenVersionId);
    const draft = item && drafts.get(item.specimenVersion.specimenId);
    if (!item || !draft) return [];
    const own = versions.filter(({ specimenId }) => specimenId === item.specimenVersion.specimenId);
    const from = own.findIndex(({ id }) => id === specimenVersionId);
    const to = own.findIndex(({ id }) => id === draft.specimenVersionId);
    // The map of a version leads from the one before it to it.
    const maps = own.slice(from + 1, to + 1).map((version) => pairMapOf(version) ?? []);
    const [then, now] = [spacingOf(item), spacingOf(draft)];
    const changed = notes.flatMap(({ id, fromPair, toPair, suggestion }) => {
      if (fromPair === null || toPair === null) return [];
      const pairs = Array.from({ length: toPair - fromPair + 1 }, (_, place) => fromPair + place);
      return [
        [
          id,
          pairs.map((pair, place) => pairChange(pair, then, now, followPair(pair, maps), suggestion?.[place] ?? null)),
        ] as const,
      ];
    });
    return [{ specimenVersionId, notes: Object.fromEntries(changed) }];
  });
}
