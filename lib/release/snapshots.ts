import * as z from 'zod/mini';
import type { ScopedData } from '@/lib/data';
import { noteView } from '@/lib/review/notes';
import { comparisonOf, measureOf } from '@/lib/rows/spacing';
import type { CriterionView } from '@/lib/rows/exercise';
import { totalWithLate } from '@/lib/review/marks';
import { grouped } from '@/shared/grouped';
import type { ReferencesShown } from '@/shared/schemas/exercise';
import {
  releaseSnapshotSchema,
  type ReleasedLine,
  type ReleasedNote,
  type ReleaseSnapshot,
} from '@/shared/schemas/release';
import { chooseFindings } from '@/shared/scoring';
import { withWords } from '@/shared/wording/finding-words';
import type { PlannedRelease } from './plan';

export type BuiltRelease = { snapshot: ReleaseSnapshot; referenceSetId: string | null; engine: number };

/** What each student would see, exactly as it is stored on release. By proof id. */
export async function buildSnapshots(
  data: ScopedData,
  planned: readonly PlannedRelease[],
  criteria: readonly CriterionView[],
  referencesShown: ReferencesShown,
): Promise<Map<string, BuiltRelease>> {
  const proofIds = planned.map(({ proofId }) => proofId);
  const [notes, items] = await Promise.all([data.notes.ofProofs(proofIds), data.critique.measured(proofIds)]);
  const notesOf = grouped(notes, ({ proofItem }) => proofItem.id);
  const itemsOf = grouped(items, ({ proofId }) => proofId);
  return new Map(
    planned.map((release) => {
      const own = (itemsOf.get(release.proofId) ?? []).toSorted(
        (one, other) => one.specimenVersion.specimen.position - other.specimenVersion.specimen.position,
      );
      const lines = own.map((item): ReleasedLine => ({
        specimenVersionId: item.specimenVersionId,
        text: item.specimenVersion.text,
        notes: (notesOf.get(item.id) ?? []).map(releasedNote),
        deviations: referencesShown === 'never' ? null : deviationsOf(item),
        usual: besideUsual(item),
      }));
      const compared = own.find(({ comparisons }) => comparisons.length > 0)?.comparisons[0];
      return [
        release.proofId,
        {
          snapshot: z.parse(releaseSnapshotSchema, snapshotOf(release, lines, criteria)),
          referenceSetId: compared?.referenceSetId ?? null,
          engine: compared?.engine ?? own[0]?.measurements[0]?.engine ?? 0,
        },
      ];
    }),
  );
}

function snapshotOf(
  { proofId, marks, late }: PlannedRelease,
  lines: ReleasedLine[],
  criteria: readonly CriterionView[],
): ReleaseSnapshot {
  const marked = criteria.map(({ versionId, title, weight, levels }) => ({
    versionId,
    title,
    weight,
    levels,
    mark: { level: marks.find(({ criterionVersionId }) => criterionVersionId === versionId)?.level ?? null },
  }));
  const total = totalWithLate(marked, late);
  return {
    version: 1,
    proofId,
    lines,
    marks: marked.map(({ versionId, mark, title, weight, levels }) => ({
      criterionVersionId: versionId,
      title,
      weight,
      level: mark.level,
      levels,
    })),
    total: { before: total.percent, after: total.after, arithmetic: total.arithmetic, late: total.late },
  };
}

/** Without names: authors are looked up when it is shown, so that an erased person is named nowhere. */
function releasedNote(row: Parameters<typeof noteView>[0]): ReleasedNote {
  const { id, fromPair, toPair, suggestion, settled, entries } = noteView(row, false);
  return { id, fromPair, toPair, suggestion, settled, entries: entries.map((entry) => ({ ...entry, author: null })) };
}

type Measured = Awaited<ReturnType<ScopedData['critique']['measured']>>[number];

function deviationsOf({ comparisons: [compared] }: Measured): ReleasedLine['deviations'] {
  if (!compared) return null;
  const { author, tightness, pairs, findings } = comparisonOf(compared);
  return { author, tightness, pairs, findings: findings.map(withWords) };
}

/** Gaps that are wider or tighter than usual, and letters out of place by it: only where no reference decides. */
function besideUsual({ comparisons, measurements: [measured] }: Measured): ReleasedLine['usual'] {
  if (comparisons.length > 0 || !measured) return [];
  return chooseFindings(measureOf(measured).findings, [])
    .filter(({ kind }) => kind === 'usual' || kind === 'misplaced')
    .map(withWords);
}
