import type { LineMeasure, PairMeasure } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Ground, Size, Spacing } from '@/shared/schemas/spacing';
import { median, medianAbsoluteDeviation } from '@/shared/stats/median';
import { judgePrepared, usualRanges } from '@/shared/usual-range/usual-range';
import { MeasureError } from '../measure-error';
import { apparentGap, totalForGap, whiteArea } from '../measure/apparent-gap';
import { clearance } from '../measure/clearance';
import { counterWidth } from '../measure/counters';
import { ENGINE } from '../measure/engine';
import { builtTotals, ENOUGH_PAIRS, lettersMiddle, NEARLY_TOUCHING, pairReferences } from '../measure/pair-references';
import { type PreparedLine, type PreparedPair, prepareLine } from '../measure/prepared-line';
import { round2, round4, roundOrNull, whole } from '../measure/round';

/**
 * Measures one line as set: every pair and the line's own centre, in numbers. `smallestSize`, where one is named, is
 * where crowding will be judged.
 * @throws MeasureError for offsets of the wrong length or no whole numbers, an unknown size, a letter without outline.
 */
export function measureLine(
  pack: Pack,
  spacing: Spacing,
  at: { size: Size; ground: Ground; smallestSize?: Size | null | undefined },
): LineMeasure {
  checkSpacing(pack, spacing);
  if (!(at.size.value > 0 && at.size.value < Infinity))
    throw new MeasureError(
      'bad-size',
      `The size is “${at.size.value}”. Give a size above 0 in px or pt.`,
      String(at.size.value),
    );
  const line = prepareLine(pack);
  const set = line.pairs.map((pair, index) => setPair(pair, spacing, index));
  const totals = set.map(({ total }) => total);
  const references = pairReferences(line, totals);
  const measuredPairs = set.map((pair, index) => pairMeasure(line, pair, spacing, index, references[index]!));
  const usual = usualRanges(line);
  const judged = judgePrepared(line, {
    totals,
    tracking: spacing.tracking,
    gaps: set.map(({ gap }) => gap),
    clearances: measuredPairs.map(({ clearance: near }) => near),
    sizePx: at.size.unit === 'px' ? at.size.value : (at.size.value * 4) / 3,
  });
  const pairs = measuredPairs.map((pair, index): PairMeasure => ({
    ...pair,
    usual: usual[index]!,
    surprise: roundOrNull(judged.pairs[index]?.surprise ?? null),
    outside: judged.pairs[index]?.outside ?? null,
  }));
  const own = pairs.filter((pair) => pair.group === 'letters' || pair.group === 'capitals');
  return {
    engine: ENGINE,
    text: pack.text,
    letters: line.clusters,
    size: at.size,
    ground: at.ground,
    ...(at.smallestSize && { smallestSize: at.smallestSize }),
    pairs,
    line: {
      reference: roundOrNull(lettersMiddle(line, totals)),
      asBuilt: roundOrNull(lettersMiddle(line, builtTotals(line))),
      faceReference: roundOrNull(line.faceReference),
      stemGap: roundOrNull(line.stem?.stemGap ?? null),
      stemToStem: roundOrNull(line.stem?.stemToStem ?? null),
      tightness: round2(judged.tightness),
      evennessGap: unevenness(own.map((pair) => pair.apparentGap)),
      counter: roundOrNull(middle(line.letters.map(counterWidth).filter((width) => width !== null))),
      faceCounter: roundOrNull(line.face.controlCounter),
    },
  };
}

type SetPair = { pair: PreparedPair; total: number; gap: number };

function setPair(pair: PreparedPair, spacing: Spacing, index: number): SetPair {
  const total = pair.builtIn + spacing.tracking + spacing.offsets[index]!;
  return { pair, total, gap: apparentGap(pair.white, total + pair.wordSpace) };
}

function pairMeasure(
  line: PreparedLine,
  { pair, total, gap }: SetPair,
  spacing: Spacing,
  index: number,
  reference: number | null,
): Omit<PairMeasure, 'usual' | 'surprise' | 'outside'> {
  const near = clearance(pair.left, pair.right, pair.left.advance + pair.wordSpace + total);
  const wanted = reference === null ? null : totalForGap(pair.white, reference);
  return {
    index,
    left: line.clusters[index]!,
    right: line.clusters[index + 1]!,
    builtIn: round2(pair.builtIn),
    tracking: spacing.tracking,
    offset: spacing.offsets[index]!,
    total: round2(total),
    wordSpace: round2(pair.wordSpace),
    group: pair.group,
    apparentGap: round2(gap),
    area: round2(whiteArea(pair.white, total + pair.wordSpace) / 1000),
    clearance: round2(near.distance),
    contact: near.crossing
      ? 'crossing'
      : near.distance < 1
        ? 'touching'
        : near.distance < NEARLY_TOUCHING * (line.stem?.stemGap ?? 0)
          ? 'near'
          : 'apart',
    sides: { left: pair.left.sides.right, right: pair.right.sides.left },
    reference: roundOrNull(reference),
    suggestion: wanted === null ? null : whole(wanted - pair.wordSpace - pair.builtIn - spacing.tracking),
  };
}

function middle(values: number[]): number | null {
  return values.length === 0 ? null : median(values);
}

/** Median absolute deviation over the median; null for a line too short to be called even or uneven. */
function unevenness(values: number[]): number | null {
  if (values.length < ENOUGH_PAIRS) return null;
  return round4(medianAbsoluteDeviation(values) / median(values));
}

/** @throws MeasureError when a spacing does not fit a line, quoting the value. */
function checkSpacing(pack: Pack, spacing: Spacing): void {
  const pairs = pack.letters.length - 1;
  if (spacing.offsets.length !== pairs) {
    throw new MeasureError(
      'wrong-length',
      `“${pack.text}” has ${pairs} gaps, but ${spacing.offsets.length} offsets were given. Give one offset a gap, 0 where nothing is changed.`,
      String(spacing.offsets.length),
    );
  }
  checkOffset(spacing.tracking, 'tracking');
  spacing.offsets.forEach((offset, index) => checkOffset(offset, `offset ${index + 1}`));
}

function checkOffset(value: number, name: string): void {
  if (typeof value !== 'number' || !Number.isInteger(value) || Math.abs(value) > 2000) {
    throw new MeasureError(
      'bad-offset',
      `The ${name} is “${value}”. It must be a whole number of thousandths of an em from −2000 to 2000.`,
      String(value),
    );
  }
}
