import type {
  Finding,
  FindingKind,
  FindingOf,
  WordedFinding,
  StoredFinding,
  Yardstick,
} from '@/shared/schemas/finding';
import { withUnit } from '@/shared/text/number';
import { asShareOf, ordinal, pairName, perMilleEm, shareWords, sizeText } from './lengths';
import { leftWords } from './contact-words';
import { outsideWords } from './usual-words';

/** A plain sentence, and the size of it in something that can be seen, where that helps. */
export type FindingText = { sentence: string; comparison: string | null };

/**
 * The one place where a finding becomes a sentence: pages, paper, exports and commands all say it as here. What an old
 * engine stored in words keeps them.
 * @example sayFinding(deviation of 20) // { sentence: 'AV is too wide: 20/1000 em more than the reference, …', comparison: … }
 */
export function sayFinding(finding: StoredFinding): FindingText {
  if ('sentence' in finding) return { sentence: finding.sentence, comparison: finding.comparison };
  const beside = 'beside' in finding ? finding.beside : null;
  return { sentence: sentenceOf(finding), comparison: COMPARED.has(finding.kind) ? inSight(finding, beside) : null };
}

/** Sentence and comparison in one. @example '… Optical. That is about a third of the white between two stems.' */
export function findingText(finding: StoredFinding): string {
  const { sentence, comparison } = sayFinding(finding);
  return comparison === null ? sentence : `${sentence} That is ${comparison}.`;
}

/** A finding with its words fixed, for what goes out and never changes again. */
export function withWords(finding: StoredFinding): WordedFinding {
  const { kind, weight, from, to, direction } = finding;
  return { kind, weight, from, to, direction, ...sayFinding(finding) };
}

function sentenceOf<Kind extends FindingKind>(finding: FindingOf<Kind>): string {
  return (SENTENCES[finding.kind] as (finding: FindingOf<Kind>) => string)(finding);
}

/** One maker of sentences a kind: a new kind does not compile without its own. */
const SENTENCES: { [Kind in FindingKind]: (finding: FindingOf<Kind>) => string } = {
  'evenness-gap': ({ value }) =>
    `Half of the gaps are within ${withUnit(value, '%')} of the middle gap, as they look (apparent gap).`,
  'evenness-area': ({ value }) => `Half of the gaps are within ${withUnit(value, '%')} of the middle gap by area.`,
  widest: (finding) => (finding.why === null ? extreme(finding) : openAbove(finding)),
  narrowest: (finding) => extreme(finding),
  gap: ({ letters, value }) => `${pairName(letters)} looks as open as two straight stems ${perMilleEm(value)} apart.`,
  balance: ({ value }) => `A typical gap is ${shareWords(value)} the white inside the letters.`,
  'set-differently': ({ letters, wide, narrow, value }) =>
    `${pairName(letters)} appears more than once and is not spaced alike: the ${ordinal(wide + 1)} gap is ${perMilleEm(value)} wider than the ${ordinal(narrow + 1)}.`,
  'tightness-face': ({ value, direction }) =>
    direction === null
      ? 'Overall, the line is about as tight as the face’s own spacing.'
      : `As a whole the line is ${direction === 'wide' ? 'wider' : 'tighter'} than the face comes, by ${perMilleEm(value)} at a typical gap.`,
  capitals: () =>
    'A line of capitals is usually opened a little beyond what the face gives (common practice); this one is not.',
  touching: ({ letters }) => `${letters[0]} and ${letters[1]} touch. If you mean it, say so.`,
  crossing: ({ letters }) => `${letters[0]} and ${letters[1]} run into each other.`,
  filling: ({ letters, size, smallest, value }) =>
    `At ${sizeText(size)}${smallest ? ', the smallest size in use,' : ''} only ${leftWords(value, size)} between ${letters[0]} and ${letters[1]}, and it may fill in.`,
  mistakable: ({ letters, readAs }) => `${pairName(letters)} is so close that it may be read as ${readAs}.`,
  'dark-ground': ({ value }) =>
    `On a dark ground light letters look a little larger: at this size each gap looks about ${perMilleEm(value)} narrower than it is (an estimate).`,
  'word-space': ({ letters }) =>
    `The word space between ${letters[0]} and ${letters[1]} is hardly wider than the gaps between letters, so the two words may run together.`,
  'word-spaces-differ': ({ letters, narrow, value }) =>
    `The word spaces differ: between ${letters[0]} and ${letters[1]} it looks ${perMilleEm(value)} wider than between ${narrow[0]} and ${narrow[1]}.`,
  usual: ({ letters, direction }) => outsideWords(pairName(letters), direction === 'wide' ? 'wider' : 'tighter'),
  'stands-out': ({ letters, direction }) =>
    `${pairName(letters)} stands out most: it looks ${direction === 'wide' ? 'wide' : 'tight'} beside what is usual.`,
  'set-tight': ({ letters, furthest, value }) =>
    `The line is set so tight that the distance between letters decides: ${pairName(letters)} is nearest, ${pairName(furthest)} ${perMilleEm(value)} further apart.`,
  joined: ({ letters }) =>
    `Running text joins ${letters[0]} and ${letters[1]} to one shape, so there is no gap to set here.`,
  'size-response': ({ sizes, done, expected }) =>
    `From ${sizeText(sizes[0])} to ${sizeText(sizes[1])} this line ${done === 0 ? 'is spaced alike' : `was set ${perMilleEm(done)} ${widerOrTighter(done)}`}. Faces with optical sizes are about ${perMilleEm(expected)} ${widerOrTighter(expected)} there (the mean of five such faces, which differ a lot).`,
  'weight-copied': ({ weights: [light, bold] }) =>
    `Weights ${light} and ${bold} carry the same offsets. Gaps are narrower in the bolder weight, so the same offset takes a larger share of them and the line may crowd (19 families: from 400 to 700 stem gaps fall by about ${perMilleEm(40)}).`,
  'weight-share': ({ weights: [light, bold] }) =>
    `As a share of the stem gap, weight ${bold} is clearly tighter than weight ${light}. A bold usually keeps its share, since gap and counter shrink together.`,
  'face-copied': ({ families: [one, other] }) =>
    `${one} and ${other} carry the same offsets. What suits one face rarely suits another (common practice).`,
  deviation: ({ letters, value, direction, asAnother, designersVary }) => {
    const more = `${perMilleEm(value)} ${direction === 'wide' ? 'more' : 'less'} than the reference`;
    const another = asAnother ? ' Another reference has it as here.' : '';
    return designersVary
      ? `${pairName(letters)} differs from the reference: ${more}, overall tracking discounted. Designers vary here.${another}`
      : `${pairName(letters)} is too ${direction}: ${more}, overall tracking discounted.${another}`;
  },
  tightness: ({ value, direction }) =>
    `The whole line is ${direction === 'wide' ? 'wider' : 'tighter'} than the reference, by ${perMilleEm(value)} at a typical gap.`,
  misplaced: ({ name, value, direction }) => `${name} is too far ${direction}, by ${perMilleEm(value)}.`,
  agreement: ({ letters, references, value }) =>
    `The ${references} references differ at ${pairName(letters)}, by ${perMilleEm(value)}.`,
  within: ({ author }) =>
    `Every gap is within the tolerance of the reference by ${author}, overall tracking discounted.`,
};

/** Kinds whose size is also compared with a length that can be seen. */
const COMPARED: ReadonlySet<FindingKind> = new Set<FindingKind>([
  'widest',
  'narrowest',
  'gap',
  'set-differently',
  'tightness-face',
  'filling',
  'mistakable',
  'word-space',
  'word-spaces-differ',
  'deviation',
  'tightness',
  'misplaced',
  'agreement',
]);

function inSight(finding: Finding, beside: Yardstick): string | null {
  if (finding.kind === 'tightness-face' && finding.direction === null) return null;
  if (finding.kind === 'filling') return asShareOf(finding.clearance, beside);
  if (finding.kind === 'word-space') return asShareOf(finding.gap, beside);
  return asShareOf(finding.value, beside);
}

function extreme({ letters, by, value, direction }: FindingOf<'widest'> | FindingOf<'narrowest'>): string {
  const [most, more] = direction === 'wide' ? ['widest', 'more'] : ['narrowest', 'less'];
  const how = by === 'area' ? `By area, the ${most} gap is` : `The gap that looks ${most} is`;
  return `${how} ${pairName(letters)}: ${perMilleEm(value)} ${more} than the middle of the line.`;
}

function openAbove({ letters, why, value }: FindingOf<'widest'>): string {
  const most = `${pairName(letters)} holds the most white of the line, ${perMilleEm(value)} more than the middle`;
  return why === 'near'
    ? `${most}; its letters nearly meet, so it can’t close further: look at its neighbours.`
    : `${most}, as designers usually leave it.`;
}

function widerOrTighter(value: number): string {
  return value > 0 ? 'wider' : 'tighter';
}
