import type { Finding, LineMeasure, PairComparison, ReferenceSpacing } from '@/shared/schemas/measure';
import { asShareOfStemGap, betweenLetters, thousandths } from '../wording/lengths';
import { makeFinding } from './findings/measured';

type Compared = {
  tightness: number;
  tightnessTolerance: number;
  reference: ReferenceSpacing;
  pairs: PairComparison[];
  others: number;
};

/** What a comparison says: tightness, letters out of place, then the pairs left outside their tolerance. */
export function comparisonFindings(line: LineMeasure, compared: Compared): { findings: Finding[]; outside: number } {
  const misplaced = misplacedLetters(line, compared.pairs);
  const told = new Set(misplaced.flatMap(({ letter }) => [letter - 1, letter]));
  const alone = compared.pairs.filter((pair) => !pair.within && !told.has(pair.index));
  const findings = [
    ...tightnessFinding(line, compared),
    ...misplaced.map((letter) => misplacedFinding(line, letter)),
    ...alone.map((pair) => deviationFinding(line, pair)),
    ...compared.pairs
      .filter((pair) => pair.referencesDiffer > 2 * pair.tolerance)
      .map((pair) => agreementFinding(line, pair, compared.others)),
  ];
  const outside = misplaced.length + alone.length;
  return {
    findings: outside === 0 && compared.pairs.length > 0 ? [...findings, within(compared.reference)] : findings,
    outside,
  };
}

function tightnessFinding({ line }: LineMeasure, { tightness, tightnessTolerance }: Compared): Finding[] {
  if (Math.abs(tightness) <= tightnessTolerance) return [];
  return [
    makeFinding({
      kind: 'tightness',
      weight: 'remark',
      value: tightness,
      direction: tightness > 0 ? 'wide' : 'tight',
      sentence: `The whole line is set ${tightness > 0 ? 'wider' : 'tighter'} than the reference, by ${thousandths(tightness)} at a typical gap.`,
      comparison: asShareOfStemGap(tightness, line.stemGap),
    }),
  ];
}

function misplacedFinding({ letters, line }: LineMeasure, { letter, shift }: MisplacedLetter): Finding {
  const way = shift > 0 ? 'right' : 'left';
  return makeFinding({
    kind: 'misplaced',
    weight: 'remark',
    from: letter - 1,
    to: letter,
    letter,
    value: shift,
    direction: way,
    sentence: `The letter “${letters[letter]}” stands too far ${way}, by ${thousandths(shift)}.`,
    comparison: asShareOfStemGap(shift, line.stemGap),
  });
}

function deviationFinding({ letters, line }: LineMeasure, pair: PairComparison): Finding {
  const wide = pair.rest > 0;
  const asAnother = pair.asAnother ? ' Another reference sets it as here.' : '';
  return makeFinding({
    kind: 'deviation',
    weight: 'remark',
    from: pair.index,
    value: pair.rest,
    direction: wide ? 'wide' : 'tight',
    sentence: `${capital(betweenLetters(letters[pair.index]!, letters[pair.index + 1]!))} it is ${thousandths(pair.rest)} ${wide ? 'wider' : 'tighter'} than in the reference, tightness apart.${asAnother}`,
    comparison: asShareOfStemGap(pair.rest, line.stemGap),
  });
}

function agreementFinding({ letters, line }: LineMeasure, pair: PairComparison, others: number): Finding {
  return makeFinding({
    kind: 'agreement',
    from: pair.index,
    value: pair.referencesDiffer,
    sentence: `${capital(betweenLetters(letters[pair.index]!, letters[pair.index + 1]!))} the ${others} references themselves are ${thousandths(pair.referencesDiffer)} apart.`,
    comparison: asShareOfStemGap(pair.referencesDiffer, line.stemGap),
  });
}

function within({ author }: ReferenceSpacing): Finding {
  return makeFinding({
    kind: 'within',
    value: 0,
    unit: 'count',
    sentence: `Tightness apart, every gap is within the tolerance of the reference by ${author}.`,
  });
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** A letter that stands too far right (shift above 0) or left, 1/1000 em. */
type MisplacedLetter = { letter: number; shift: number };

/**
 * Letters whose two gaps are wrong only because the letter between them is out of place: moving it by one shift
 * brings both gaps within tolerance. Greatest shift first; no gap is explained twice.
 */
function misplacedLetters(line: LineMeasure, pairs: PairComparison[]): MisplacedLetter[] {
  const found: MisplacedLetter[] = [];
  for (let letter = 1; letter < line.letters.length - 1; letter += 1) {
    const before = pairs[letter - 1]!,
      after = pairs[letter]!;
    if (before.within || after.within || before.rest * after.rest >= 0) continue;
    const left = Math.abs(before.rest + after.rest) / 2;
    if (left <= Math.min(before.tolerance, after.tolerance))
      found.push({ letter, shift: (before.rest - after.rest) / 2 });
  }
  const used = new Set<number>();
  return found
    .sort((a, b) => Math.abs(b.shift) - Math.abs(a.shift) || a.letter - b.letter)
    .filter(({ letter }) => {
      if (used.has(letter - 1) || used.has(letter)) return false;
      used.add(letter - 1).add(letter);
      return true;
    })
    .sort((a, b) => a.letter - b.letter);
}
