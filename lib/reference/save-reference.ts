import { AppError, notFound } from '@/lib/access/errors';
import { operation } from '@/lib/access/operation';
import type { ReferenceContent } from '@/lib/data/references';
import { retryOnConflict } from '@/lib/data/retry';
import { readPack } from '@/lib/rows/specimen';
import { canonicalJson } from '@/shared/text/canonical-json';
import type { SaveAnswer } from '@/shared/schemas/draft';
import { saveReferenceInput } from '@/shared/schemas/reference';
import { referenceView } from '../rows/reference';

/**
 * Keeps the actor's own reference of a line as the bench sends it. Sent again it is answered the same.
 * Result: the version it made, or what is kept instead when another window came first.
 */
export const saveReference = operation({
  name: 'save-reference',
  allow: 'reference:set',
  input: saveReferenceInput,
  run: ({ data, now }, { specimenVersionId, slot, baseVersion, spacing, tolerances, reasons }): Promise<SaveAnswer> =>
    retryOnConflict(async () => {
      const version = await data.specimens.version(specimenVersionId);
      const member = version && (await data.exercises.myMember(version.specimen.exercise.courseId));
      if (!member) throw notFound();
      const pairs = readPack(version.packSha, version.pack.payload).letters.length - 1;
      const content: ReferenceContent = {
        spacing,
        tolerances: tolerances ?? Array.from({ length: pairs }, () => null),
        reasons: (reasons ?? Array.from({ length: pairs }, () => '')).map((reason) => reason.trim() || null),
        carriedFromId: null,
      };
      refuseOtherLength(pairs, { offsets: spacing.offsets, tolerances: content.tolerances, reasons: content.reasons });
      const key = { specimenVersionId, authorId: member.id, slot };
      const there = await data.references.byKey(key);
      if (!there && baseVersion === 0) {
        await data.references.create(key, content, now);
        return { version: 1 };
      }
      if (!there) throw notFound();
      if (there.version === baseVersion && (await data.references.change(there.id, baseVersion, content, now)))
        return { version: baseVersion + 1 };
      return answerFor(there, content);
    }),
});

type Row = Parameters<typeof referenceView>[0] & { version: number };

/** The same again is simply kept; anything else is told what stands there. */
function answerFor(there: Omit<Row, 'author'>, sent: ReferenceContent): SaveAnswer {
  const { spacing, tolerances, reasons } = referenceView({ ...there, author: { user: null } });
  const content = ({
    spacing: set,
    tolerances: allowed,
    reasons: given,
  }: Pick<ReferenceContent, 'spacing' | 'tolerances' | 'reasons'>) => canonicalJson([set, allowed, given]);
  if (content({ spacing, tolerances, reasons }) === content(sent)) return { version: there.version };
  return { conflict: { version: there.version, spacing, tolerances, reasons: reasons.map((reason) => reason ?? '') } };
}

function refuseOtherLength(pairs: number, lists: Record<string, readonly unknown[]>): void {
  for (const [name, list] of Object.entries(lists)) {
    if (list.length !== pairs)
      throw new AppError(
        'INVALID',
        `This line has ${pairs} gaps, and ${list.length} ${name} were sent. Reload the bench; your changes are kept on this device.`,
      );
  }
}
