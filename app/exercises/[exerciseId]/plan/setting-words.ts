import type { BenchTelling } from '@/shared/schemas/course';
import type { LateRule, ReferencesShown } from '@/shared/schemas/exercise';
import { type CriterionBasis, criterionBasisSchema } from '@/shared/schemas/criterion';
import type { SecondMarking } from '@/shared/schemas/mark';
import { withUnit } from '@/shared/text/number';

/** Settings in words, once for forms and for display. */
export const tellingChoices: { value: BenchTelling; label: string; hint: string }[] = [
  { value: 'nothing', label: 'Nothing', hint: 'The line, the offsets and the eye.' },
  { value: 'contact', label: 'Contact', hint: 'Letters that touch or cross are pointed out.' },
  { value: 'evenness', label: 'Evenness', hint: 'The gap ruler too: how open each gap looks beside the others.' },
  {
    value: 'everything',
    label: 'Everything',
    hint: 'Suggestions too, and references and tolerances where they may be seen.',
  },
];

export const shownChoices: { value: ReferencesShown; label: string; hint: string }[] = [
  { value: 'never', label: 'Never', hint: 'Students never see a reference.' },
  {
    value: 'after-release',
    label: 'After a release',
    hint: 'Each student sees those that their release was made with.',
  },
  { value: 'always', label: 'From the start', hint: 'References are there to be looked at while spacing.' },
];

/** The name of each basis; a new basis does not compile until it has one. */
const basisWords: Record<CriterionBasis, { label: string; hint: string }> = {
  judgement: { label: 'The marker’s eye', hint: 'Nothing is proposed; a person looks and decides.' },
  evenness: { label: 'Evenness', hint: 'A level is proposed from how even the gaps are; a person decides.' },
  contact: { label: 'Contact', hint: 'A level is proposed from letters that touch or cross; a person decides.' },
  distance: {
    label: 'Nearness to the references',
    hint: 'A level is proposed from what lies outside the tolerance. Never the only criterion.',
  },
};
export const basisChoices = criterionBasisSchema.options.map((value) => ({ value, ...basisWords[value] }));

export const acceptChoices: { value: LateRule['accept']; label: string; hint: string }[] = [
  { value: 'always', label: 'Taken, and marked as late', hint: 'Until marking of the round starts.' },
  {
    value: 'until',
    label: 'Taken until a last date, and marked as late',
    hint: 'After that date nothing more is taken.',
  },
  { value: 'none', label: 'Not taken', hint: 'The due date is the end.' },
];

/** What happens to late proofs, in a sentence; the caller adds the last date, since it knows the zone. */
export function lateWords(rule: LateRule): string {
  if (rule.accept === 'none') return 'late proofs are not taken';
  const taken = rule.accept === 'until' ? 'late proofs are taken until the last date' : 'late proofs are taken';
  return rule.deductPerDay === 0
    ? `${taken} and shown as late`
    : `${taken}, less ${withUnit(rule.deductPerDay, '%', 1)} of the mark for each day begun`;
}

export const wordFor = <Value extends string>(choices: { value: Value; label: string }[], value: Value): string =>
  choices.find((choice) => choice.value === value)?.label ?? value;

export const secondMarkerChoices: { value: SecondMarking['which']; label: string; hint: string }[] = [
  { value: 'none', label: 'No proof', hint: 'One marker judges each proof.' },
  {
    value: 'share',
    label: 'A share of the proofs',
    hint: 'The share below. Proofs are drawn by lot on arrival; no one can influence the draw, and a larger share keeps the proofs of a smaller one.',
  },
  { value: 'all', label: 'Every proof', hint: 'Twice the work, and the fairest.' },
];

/** Which proofs get a second marker, in a sentence. */
export function secondMarkingWords({ which, percent }: SecondMarking): string {
  if (which === 'none') return 'No proof of this round is given to a second marker.';
  if (which === 'all') return 'Every proof of this round is judged by two markers.';
  return `About ${withUnit(percent, '%')} of the proofs are judged by two markers. They are drawn by lot on arrival; no one can influence the draw. In a small class the actual share may be larger or smaller.`;
}
