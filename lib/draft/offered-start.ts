import type { ScopedData } from '@/lib/data';
import type { DraftPurpose } from '@/lib/data/drafts';
import { faceName } from '@/lib/exercise/read-specimen';
import { settingOf } from '@/lib/proof/measure-proof-line';
import type { CurrentLine } from '@/lib/proof/current-lines';
import type { Spacing } from '@/shared/schemas/spacing';
import { withUnit } from '@/shared/text/number';
import { spacingOf } from './spacing-of';

type At = { memberId: string; line: CurrentLine; lines: readonly CurrentLine[]; purpose: DraftPurpose };

/**
 * A setting of the same words that somebody wants to start this line from: of another line of the exercise (by its
 * specimen), or of their trial of this one. The bench offers it, and nothing is replaced until it is taken there.
 * Null where there is none, or where the words differ: offsets are copied by their places.
 */
export async function offeredStart(
  data: ScopedData,
  at: At,
  from: string,
): Promise<{ label: string; spacing: Spacing } | null> {
  const trial = from === 'trial';
  const source = trial ? at.line : at.lines.find(({ specimenId }) => specimenId === from);
  if (!source || source.text !== at.line.text || source.pack.letters.length !== at.line.pack.letters.length)
    return null;
  const purpose = trial ? 'practice' : at.purpose;
  if (source.id === at.line.id && purpose === at.purpose) return null;
  const draft = await data.drafts.byKey({ memberId: at.memberId, specimenVersionId: source.id, purpose });
  if (!draft) return null;
  const { size } = settingOf(source);
  return {
    label: trial ? 'Your trial of this line' : `${faceName(source.pack)}, ${withUnit(size.value, size.unit, 1)}`,
    spacing: spacingOf(draft),
  };
}
