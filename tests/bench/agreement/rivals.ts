import { seenGap, totalForNearGap } from '@/shared/measure/near-gap';
import { totalForGap, visibleWhite } from '@/shared/measure/apparent-gap';
import { clearance } from '@/shared/measure/clearance';
import type { LetterShape } from '@/shared/measure/letter-shape';
import { median } from '@/shared/stats/median';
import { sharesOfPair } from '@/shared/usual-range/usual-range';
import { agreementFaces, type AgreementFace } from './load';
import { TRAIN } from './faces';

/** A way to predict the kerning of every pair of a face before calibration, 1/1000 em. */
export type Rival = { name: string; predict(face: AgreementFace): Promise<number[]> };

export const RIVALS: Rival[] = [
  { name: 'apparent gap (the white that is hatched)', predict: async (face) => evenWhite(face) },
  { name: 'nearest distance', predict: async (face) => evenDistances(face) },
  {
    name: 'near-weighted mean of the gap',
    predict: async (face) =>
      face.pairs.map(
        ({ left, right }) =>
          totalForNearGap(seenGap(face.shapes[left]!, face.shapes[right]!), face.face.reference!) ?? 0,
      ),
  },
  {
    name: '**usual range**',
    predict: async ({ pairs, shapes, usual }) =>
      pairs.map(({ left, right }) => sharesOfPair(usual, shapes[left]!, shapes[right]!).mean * usual.features.unit),
  },
  { name: 'lookup: mean of ten other designers', predict: lookup },
];

/** Each pair at the apparent gap of the control pairs: as much white between the letters as is hatched. */
function evenWhite({ face, shapes, pairs }: AgreementFace): number[] {
  return pairs.map(
    ({ left, right }) => totalForGap(visibleWhite(shapes[left]!, shapes[right]!, face.depths), face.controlGap!) ?? 0,
  );
}

/** Each pair at the clearance of the control pairs, found by halving. */
function evenDistances(face: AgreementFace): number[] {
  const wanted = median(controlPairs(face).map(([a, b]) => clearance(a, b, a.advance).distance));
  return face.pairs.map(({ left, right }) => {
    const a = face.shapes[left]!,
      b = face.shapes[right]!;
    let low = -600,
      high = 600;
    for (let turn = 0; turn < 11; turn += 1) {
      const middle = (low + high) / 2;
      if (clearance(a, b, a.advance + middle).distance < wanted) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

/** The one rival that knows letters by name: what the faces fitted on ship for the same two letters. */
async function lookup(face: AgreementFace): Promise<number[]> {
  const others = (await agreementFaces(TRAIN)).filter((other) => other.name !== face.name);
  return face.pairs.map((_, index) => others.reduce((sum, other) => sum + other.kerns[index]!, 0) / others.length);
}

function controlPairs(face: AgreementFace): [LetterShape, LetterShape][] {
  const names = ['HH', 'HO', 'OH', 'OO', 'Hn', 'Ho', 'On', 'Oo', 'nn', 'no', 'on', 'oo'];
  return names.map((name) => {
    const pair = face.pairs.find(({ letters }) => letters === name)!;
    return [face.shapes[pair.left]!, face.shapes[pair.right]!];
  });
}
