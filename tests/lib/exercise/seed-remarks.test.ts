import { beforeAll, describe, expect, it } from 'vitest';
import { buildPack } from '@/lib/face/build-pack';
import { lines } from '@/prisma/seed/exercise-words';
import { spacingBy } from '@/prisma/seed/habits';
import { gapNames, ownSpacings } from '@/prisma/seed/own-spacing';
import { referenceBy, authors } from '@/prisma/seed/references';
import { type Remark, remarksOn } from '@/prisma/seed/remarks';
import { spacedLetters } from '@/shared/critique/run';
import { clearanceAt, prepareLine } from '@/shared/measure';
import type { Pack } from '@/shared/schemas/pack';
import type { Spacing } from '@/shared/schemas/spacing';
import { compareLine, measureLine, reportLine } from '@/shared/scoring';
import { median } from '@/shared/stats/median';

/**
 * The lines of the demo's exercise that get notes, each with the instructor's reference and the remarks on every
 * student's.
 */
type Annotated = { pack: Pack; reference: Spacing; spacing: Spacing; remark: Remark };

const TOLERANCE = 10;
let packs: Pack[];
const annotated: Annotated[] = [];

beforeAll(async () => {
  packs = await Promise.all(lines.map(({ face, text }) => buildPack({ kind: 'catalogue', key: face }, text)));
  for (const [place, pack] of packs.slice(0, 4).entries()) {
    const { size, ground } = lines[place]!;
    const names = gapNames(pack);
    const reference = referenceBy(authors.instructor, pack, ownSpacings[place]!, place);
    const given = {
      ...reference,
      author: 'The instructor',
      tolerances: names.map((name) => (name === '' ? 30 : TOLERANCE)),
      reasons: names.map(() => null),
    };
    for (let student = 0; student < 14; student += 1) {
      for (const round of ['first', 'second'] as const) {
        const spacing = spacingBy(pack, ownSpacings[place]!, { student, place, round });
        const measure = reportLine(pack, spacing, { size, ground, smallestSize: { value: 24, unit: 'px' } });
        const comparison = compareLine(measure, [given]);
        const builtIn = pack.builtIn.map((units) => (units * 1000) / pack.unitsPerEm);
        for (const remark of remarksOn(
          { letters: spacedLetters(pack), builtIn, spacing, measure, comparison },
          student,
        ))
          annotated.push({ pack, reference, spacing, remark });
      }
    }
  }
}, 120_000);

/**
 * How much wider than in the reference each gap is drawn, overall tracking discounted; computed here from the spacings
 * alone.
 */
function drawnWider({ pack, reference, spacing }: Annotated): { rests: number[]; common: number } {
  const wider = spacing.offsets.map(
    (offset, gap) => offset + spacing.tracking - reference.offsets[gap]! - reference.tracking,
  );
  const common = median(wider.filter((_, gap) => gapNames(pack)[gap] !== ''));
  return { rests: wider.map((value) => value - common), common };
}

const that = (...says: Remark['says'][]) => annotated.filter(({ remark }) => says.includes(remark.says));
const restsAt = (one: Annotated) => {
  const { first, last } = one.remark.at!;
  return drawnWider(one).rests.slice(first, last + 1);
};

describe('the notes of the demo are true of what is drawn', () => {
  it('a gap that is called wide is wider than in the reference, one that is called tight is tighter, by more than the tolerance', () => {
    for (const one of that('wide')) for (const rest of restsAt(one)) expect(rest).toBeGreaterThan(TOLERANCE - 1);
    for (const one of that('tight')) for (const rest of restsAt(one)) expect(rest).toBeLessThan(1 - TOLERANCE);
    for (const { remark } of that('wide')) expect(remark.body).toMatch(/wide|hole/);
    for (const { remark } of that('tight')) expect(remark.body).toMatch(/tight|dark|crowds/);
  });

  it('a letter that is called too far to a side has that gap tighter and the other wider than in the reference', () => {
    for (const one of that('left', 'right')) {
      const [before, after] = restsAt(one) as [number, number];
      const [tighter, wider] = one.remark.says === 'left' ? [before, after] : [after, before];
      expect(tighter).toBeLessThan(0);
      expect(wider).toBeGreaterThan(0);
      expect(one.remark.body).toContain(`too far ${one.remark.says}`);
    }
  });

  it('letters that are said to touch, touch', () => {
    for (const { pack, spacing, remark } of that('touching')) {
      const line = prepareLine(pack);
      const gap = remark.at!.first;
      const total = line.pairs[gap]!.builtIn + spacing.tracking + spacing.offsets[gap]!;
      const { crossing, distance } = clearanceAt(line, gap, total);
      expect(crossing || distance < 1).toBe(true);
    }
  });

  it('a line that is called tight or open is so as a whole; an uneven one is out at three places or more', () => {
    for (const one of that('whole-tight')) expect(drawnWider(one).common).toBeLessThan(-8);
    for (const one of that('whole-wide')) expect(drawnWider(one).common).toBeGreaterThan(8);
    for (const one of that('uneven'))
      expect(drawnWider(one).rests.filter((rest) => Math.abs(rest) > TOLERANCE - 1).length).toBeGreaterThanOrEqual(3);
  });

  it('praise goes to lines in which every gap is as in the reference, within the tolerance', () => {
    for (const one of that('well'))
      for (const [gap, rest] of drawnWider(one).rests.entries())
        if (gapNames(one.pack)[gap] !== '') expect(Math.abs(rest)).toBeLessThanOrEqual(TOLERANCE + 1);
  });

  it('a suggestion brings its gap to where the reference has it', () => {
    for (const one of annotated) {
      if (!one.remark.suggestion) continue;
      const { first } = one.remark.at!;
      const offsets = one.spacing.offsets.map((offset, gap) => (gap === first ? one.remark.suggestion![0]! : offset));
      const after = drawnWider({ ...one, spacing: { ...one.spacing, offsets } });
      expect(Math.abs(after.rests[first]!)).toBeLessThan(4);
    }
  });

  it('speaks of every kind: pairs, runs and lines, wide, tight, touching, out of place, uneven and well done', () => {
    expect(new Set(annotated.map(({ remark }) => remark.says))).toEqual(
      new Set(['wide', 'tight', 'left', 'right', 'touching', 'whole-tight', 'uneven', 'well']),
    );
    const places = annotated.map(({ remark: { at } }) =>
      at === null ? 'line' : at.first === at.last ? 'pair' : 'run',
    );
    expect(new Set(places)).toEqual(new Set(['line', 'pair', 'run']));
    // An eye finds them: half of the gaps that are called wide or tight are out by a fifth of a stem gap of the boldest
    // face.
    const out = that('wide', 'tight').map((one) => Math.abs(restsAt(one)[0]!));
    expect(median(out)).toBeGreaterThan(20);
  });
});

describe('the references of the demo', () => {
  it('are the face’s own kerning, tracked, with small changes', () => {
    for (const [place, pack] of packs.entries()) {
      for (const instructor of Object.values(authors)) {
        const { tracking, offsets } = referenceBy(instructor, pack, ownSpacings[place]!, place);
        expect(Math.abs(tracking)).toBeLessThanOrEqual(20);
        for (const offset of offsets) expect(Math.abs(offset)).toBeLessThanOrEqual(24);
      }
    }
  });

  it('have no gap that designers would not set so: none is outside the usual range', () => {
    for (const [place, pack] of packs.entries()) {
      const { size, ground } = lines[place]!;
      const { pairs } = measureLine(pack, referenceBy(authors.instructor, pack, ownSpacings[place]!, place), {
        size,
        ground,
      });
      expect(pairs.filter(({ outside }) => outside).map(({ left, right }) => `${pack.text} ${left}${right}`)).toEqual(
        [],
      );
    }
  });

  it('give a reason for every change, and one that holds: a gap said to be the widest is, as the face sets the line', () => {
    for (const [place, pack] of packs.entries()) {
      const { changes } = ownSpacings[place]!;
      const names = gapNames(pack);
      for (const [name, { why }] of Object.entries(changes)) {
        expect(names, pack.text).toContain(name);
        expect(why).not.toBe('');
        const { size, ground } = lines[place]!;
        const asBuilt = { tracking: 0, offsets: pack.builtIn.map(() => 0) };
        const gaps = measureLine(pack, asBuilt, { size, ground }).pairs.filter(({ wordSpace }) => wordSpace === 0);
        // In its word, where the reason is about the word.
        const word = pack.wordSpace.findIndex((space) => space > 0);
        const firstWord = gaps.filter(({ index }) => index < word);
        const of = (list: typeof gaps) => list.find(({ left, right }) => left + right === name)!.apparentGap;
        const all = (list: typeof gaps) => list.map(({ apparentGap }) => apparentGap);
        if (/widest hole of the line/.test(why)) expect(of(gaps)).toBe(Math.max(...all(gaps)));
        if (/widest gap of the word/.test(why)) expect(of(firstWord)).toBe(Math.max(...all(firstWord)));
        if (/narrowest gap of the word/.test(why)) expect(of(gaps)).toBe(Math.min(...all(gaps)));
      }
    }
  });
});
