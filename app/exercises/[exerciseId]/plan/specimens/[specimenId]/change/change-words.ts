import { counted } from '@/shared/text/number';

type Preview = {
  kept: number;
  lost: string[];
  fresh: number;
  drafts: number;
  proofs: number;
  references: number;
  number: number;
};

/** What will happen, a sentence each: pairs, drafts, references, proofs. */
export function changeWords({ kept, lost, fresh, drafts, proofs, references, number }: Preview): string[] {
  return [
    pairWords(kept, lost, fresh),
    drafts === 0
      ? 'No student has a draft of it yet.'
      : `${counted(drafts, 'draft')} ${drafts === 1 ? 'moves' : 'move'} to the new version at once: what students set at pairs that stay is kept, new pairs begin untouched. What stood at pairs that go is kept in each draft’s history.`,
    references === 0
      ? 'It has no reference.'
      : `${counted(references, 'reference')} ${references === 1 ? 'is' : 'are'} copied to the new version in the same way${fresh + lost.length === 0 ? '' : ', as a start that its author should look at again'}.`,
    proofs === 0
      ? 'No proof holds it yet.'
      : `${counted(proofs, 'proof')} that ${proofs === 1 ? 'was' : 'were'} sent on version ${number} ${proofs === 1 ? 'stays' : 'stay'} on it, with ${proofs === 1 ? 'its' : 'their'} measures, notes and marks.`,
  ];
}

function pairWords(kept: number, lost: string[], fresh: number): string {
  if (lost.length === 0 && fresh === 0) return `All ${counted(kept, 'pair')} stay as they are.`;
  const gone =
    lost.length === 0
      ? 'none goes'
      : `${counted(lost.length, 'pair')} ${lost.length === 1 ? 'goes' : 'go'} (${lost.slice(0, 12).join(', ')}${lost.length > 12 ? ', …' : ''})`;
  return `${counted(kept, 'pair')} ${kept === 1 ? 'stays' : 'stay'}, ${gone}, ${fresh === 0 ? 'none is new' : `${counted(fresh, 'pair')} ${fresh === 1 ? 'is' : 'are'} new`}.`;
}
