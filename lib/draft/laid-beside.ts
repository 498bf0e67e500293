import type { Context } from '@/lib/access/operation';
import type { ScopedData } from '@/lib/data';
import type { CurrentLine } from '@/lib/proof/current-lines';
import { visibleReferences } from '@/lib/reference/visible-references';
import type { Spacing } from '@/shared/schemas/spacing';
import { spacingOf } from './spacing-of';

export type Laid = { id: string; label: string; spacing: Spacing; tolerances?: (number | null)[] };

/** What may be laid beside a line on the bench: the setting last sent, in a trial the line as it stands, and references where they may be seen. */
export async function laidBeside(
  context: Context,
  at: { exerciseId: string; memberId: string; line: CurrentLine; trial: boolean },
): Promise<Laid[]> {
  return [
    ...(await lastProof(context.data, at.memberId, at.line)),
    ...(at.trial ? await work(context.data, at.memberId, at.line) : []),
    ...(await references(context, at.exerciseId, at.line)),
  ];
}

async function lastProof(data: ScopedData, memberId: string, line: CurrentLine): Promise<Laid[]> {
  const item = await data.proofs.lastItem(memberId, line.id);
  if (!item) return [];
  const { number, round } = item.proof;
  return [{ id: 'last-proof', label: `Proof ${number} of round ${round.number}`, spacing: spacingOf(item) }];
}

async function work(data: ScopedData, memberId: string, line: CurrentLine): Promise<Laid[]> {
  const draft = await data.drafts.byKey({ memberId, specimenVersionId: line.id, purpose: 'work' });
  return draft ? [{ id: 'work', label: 'Your line, as it stands', spacing: spacingOf(draft) }] : [];
}

/** References, where the exercise lets this member see them now. */
async function references(context: Context, exerciseId: string, line: CurrentLine): Promise<Laid[]> {
  const visible = (await visibleReferences(context, exerciseId)).get(line.id) ?? [];
  return visible.map(({ author, tracking, offsets, tolerances }, index) => ({
    id: `reference-${index + 1}`,
    label: `Reference by ${author}`,
    spacing: { tracking, offsets },
    tolerances,
  }));
}
