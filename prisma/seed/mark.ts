import type { Caller } from '@/lib/access/caller';
import type { CritiqueLine } from '@/lib/review/desk';
import { finishProof } from '@/lib/review/claim';
import { giveMark } from '@/lib/review/marks';

/**
 * Each criterion at its proposed level where the measure proposes one, else in the middle; then the proof is done.
 * `otherwise` is the place of a criterion of which this marker thinks one level less of it, or more where there is none
 * below.
 */
export async function mark(
  marker: Caller,
  { proof, marks, comparison }: CritiqueLine,
  at: { now: Date },
  otherwise: number | null = null,
): Promise<void> {
  for (const [place, { versionId, levels, proposed }] of marks.criteria.entries()) {
    const seen = proposed?.level ?? (comparison !== null && comparison.outside > 5 ? 0 : Math.floor(levels.length / 2));
    const level = place === otherwise ? (seen > 0 ? seen - 1 : seen + 1) : seen;
    await giveMark(marker, { proofId: proof.token, criterionVersionId: versionId, level, version: -1, why: '' }, at);
  }
  await finishProof(marker, { proof: proof.token, to: 'done' }, at);
}
