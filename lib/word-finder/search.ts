import { letOthersIn } from '@/lib/let-others-in';
import type { Lettering, WordSearch } from '@/shared/schemas/word-search';
import { bestFirst, bitsIn, type Ends, inTwos, type Scored, spread } from './best-lines';
import type { FacePairs, PairFigures } from './face-pairs';
import { isCapital, type LetteredList, letteredList } from './lettered-list';
import { misreadOf } from './misread';
import type { WordList } from './word-list';

/** `most` lines are given. */
export type Search = WordSearch & { most: number };

/** A line that was found. Lengths in 1/1000 em. */
export type FoundLine = {
  text: string;
  /** The gaps that were looked for, in the order of the line, e.g. ['AV', 'VA']. */
  wanted: string[];
  /** How many different ones of the examples and kinds are in it. */
  different: number;
  /** From the narrowest to the widest apparent gap: as the face sets the line, and by the sidebearings alone. */
  asSet: number;
  unkerned: number;
  /** From the least to the greatest built-in value. */
  builtIn: number;
  /** Every word of it is among the common ones. */
  common: boolean;
  /** What it may be read as when its letters close up; null where nothing is likely. */
  misread: string | null;
};

/** `lacking` words have letters that the face does not have. */
export type Found = { lines: FoundLine[]; looked: number; matching: number; lacking: number };

/**
 * The words of a list that hold what is looked for, best first, in a face. Each pair is measured once a face; a word is
 * then a few look-ups. Works in parts and lets others in between them.
 */
export async function searchWords(list: WordList, face: FacePairs, search: Search): Promise<Found> {
  const searched = await Promise.all(partsOf(list, search));
  const pairs = new Set([...search.examples, ...searched.flatMap(({ own }) => own.pairs)]);
  const measured = await face.measure([...pairs].filter((pair) => [...pair].every(face.has)));
  const marks = await marksOf(measured, search);
  const found: Scored[] = [];
  let looked = 0,
    lacking = 0;
  for (const part of searched) {
    const own = part.own.pairs.map((pair) => marks.get(pair) ?? null);
    for (let at = 0; at < part.own.texts.length; at += 1) {
      if (at % 500 === 0) await letOthersIn();
      if (!part.takes(at)) continue;
      const scored = score(part.own, at, own, part.commonAt(at));
      if (scored === LACKING) lacking += 1;
      else looked += 1;
      if (scored !== LACKING && scored.wanted > 0) found.push(scored);
    }
  }
  await letOthersIn();
  const best = bestFirst(found, search.order);
  const lines = search.words === 1 ? best.slice(0, search.most) : inTwos(best, search);
  return { lines: lines.map((line) => described(line, marks, list)), looked, matching: found.length, lacking };
}

type Part = {
  own: LetteredList;
  takes: (at: number) => boolean;
  /** The place among the common words; Infinity for others. */
  commonAt: (at: number) => number;
};

/** The list in each lettering that is asked for, and the figures where they are. */
function partsOf(list: WordList, search: Search): Promise<Part>[] {
  const { shortest, longest, names } = search;
  const letterings = search.lettering ? [search.lettering] : letteringsFor(search);
  const fits = ({ length }: string) => length >= shortest && length <= longest;
  const words = letterings.map(async (lettering): Promise<Part> => {
    const own = await letteredList(list, lettering);
    return {
      own,
      takes: (at) => {
        const text = own.texts[at]!,
          word = list.words[at]!;
        if (!fits(text) || (names !== 'with' && isCapital(word[0]!) !== (names === 'only'))) return false;
        // A name has its capital already, and is looked at as it is written.
        return lettering === 'written' || text !== word || !letterings.includes('written');
      },
      commonAt: (at) => (at < list.ranked ? at : Infinity),
    };
  });
  const figures = wantsFigures(search)
    ? [
        letteredList(NUMBERS, 'written').then((own) => ({
          own,
          takes: (at: number) => fits(own.texts[at]!),
          commonAt: () => 0,
        })),
      ]
    : [];
  return [...words, ...figures];
}

/** Figures are in no dictionary: short numbers and years. */
const NUMBERS = { words: Array.from({ length: 2_090 }, (_, at) => String(at + 10)) };

function wantsFigures({ examples, kinds }: Search): boolean {
  return kinds.includes('one-among-figures') || examples.some((pair) => /\d/.test(pair));
}

/** The ways of writing in which the examples can be met at all; a kind of sides can be met in each. */
function letteringsFor({ examples, kinds }: Pick<Search, 'examples' | 'kinds'>): Lettering[] {
  const needed = new Set<Lettering>(kinds.length > 0 ? ['written'] : []);
  for (const pair of examples) {
    const [first, second] = [isCapital(pair[0]!), isCapital(pair[1]!)];
    needed.add(first && second ? 'capitals' : first ? 'capital' : 'written');
  }
  return needed.size > 0 ? [...needed] : ['written'];
}

type Mark = PairFigures & { bits: number };

/** For every measured pair, which of the examples and kinds it is; a bit for each. */
async function marksOf(
  measured: ReadonlyMap<string, PairFigures>,
  { examples, alike, kinds }: Search,
): Promise<Map<string, Mark>> {
  await letOthersIn();
  const samples = examples.map((pair) => ({ pair, sides: measured.get(pair)?.sides }));
  const marks = new Map<string, Mark>();
  for (const [pair, figures] of measured) {
    let bits = 0;
    samples.forEach(({ pair: sample, sides }, at) => {
      const same =
        alike && sides && figures.sides[0] === sides[0] && figures.sides[1] === sides[1] && sameLetters(pair, sample);
      if (pair === sample || same) bits |= 1 << at;
    });
    kinds.forEach((kind, at) => {
      if (figures.kinds.includes(kind)) bits |= 1 << (examples.length + at);
    });
    marks.set(pair, { ...figures, bits });
  }
  return marks;
}

function sameLetters(pair: string, sample: string): boolean {
  return isCapital(pair[0]!) === isCapital(sample[0]!) && isCapital(pair[1]!) === isCapital(sample[1]!);
}

/** A word with letters that the face does not have. */
const LACKING = 'lacking';

function score(
  { texts, pairAt, starts }: LetteredList,
  at: number,
  marks: readonly (Mark | null)[],
  common: number,
): Scored | typeof LACKING {
  let bits = 0,
    wanted = 0;
  const least: Ends = { asSet: Infinity, unkerned: Infinity, builtIn: Infinity },
    most: Ends = { asSet: -Infinity, unkerned: -Infinity, builtIn: -Infinity };
  for (let index = starts[at]!; index < starts[at + 1]!; index += 1) {
    const mark = marks[pairAt[index]!];
    if (!mark) return LACKING;
    if (mark.bits !== 0) wanted += 1;
    bits |= mark.bits;
    if (mark.asSet < least.asSet) least.asSet = mark.asSet;
    if (mark.asSet > most.asSet) most.asSet = mark.asSet;
    if (mark.unkerned < least.unkerned) least.unkerned = mark.unkerned;
    if (mark.unkerned > most.unkerned) most.unkerned = mark.unkerned;
    if (mark.builtIn < least.builtIn) least.builtIn = mark.builtIn;
    if (mark.builtIn > most.builtIn) most.builtIn = mark.builtIn;
  }
  return { text: texts[at]!, common, bits, different: bitsIn(bits), wanted, least, most };
}

function described(line: Scored, marks: ReadonlyMap<string, Mark>, list: WordList): FoundLine {
  const pairs = Array.from({ length: line.text.length - 1 }, (_, at) => line.text.slice(at, at + 2));
  return {
    text: line.text,
    wanted: pairs.filter((pair) => (marks.get(pair)?.bits ?? 0) !== 0),
    different: line.different,
    ...spread(line),
    common: line.common < Infinity,
    misread: misreadOf(line.text, list.words),
  };
}
