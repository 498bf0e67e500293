import { beforeAll, describe, expect, it } from 'vitest';
import { classSetPdf } from '@/lib/export/sheet/class-set-pdf';
import { sheetPdf } from '@/lib/export/sheet/write-pdf';
import type { Pack } from '@/shared/schemas/pack';
import { drawnPack } from '../../fixtures/drawn-pack';
import { readPdf, type Outline } from '../../fixtures/read-pdf';
import { registryFace, type RegistryFace } from '../../fixtures/registry-face';
import { registryPack } from '../../fixtures/registry-pack';
import { noteOn, sheetWith } from '../../fixtures/sheet';

const now = new Date('2027-03-08T10:00:00Z');
const left = (outline: Outline) => Math.min(...outline.map(([x]) => x));
const right = (outline: Outline) => Math.max(...outline.map(([x]) => x));
const top = (outline: Outline) => Math.max(...outline.map(([, y]) => y));
const bottom = (outline: Outline) => Math.min(...outline.map(([, y]) => y));

describe('a line on a sheet', () => {
  let lato: RegistryFace;
  let pack: Pack;
  beforeAll(async () => {
    lato = await registryFace('lato-400');
    pack = registryPack(lato, 'HIHVA');
  });

  it.each([
    { size: { value: 72, unit: 'pt' as const }, points: 72 },
    // CSS Values and Units 3, 6.2: 1 px = 0.75 pt.
    { size: { value: 96, unit: 'px' as const }, points: 72 },
    { size: { value: 10.5, unit: 'pt' as const }, points: 10.5 },
  ])(
    'has its true size in points at $size.value $size.unit, held against the face by HarfBuzz',
    async ({ size, points }) => {
      const {
        pages: [page],
      } = await readPdf(sheetPdf(sheetWith([{ pack, size, tracking: 20, offsets: [-12, 0, 0, -40] }]), 'a4', now));
      const [H, I, H2, V, A] = page!.filled[0]!;
      const unit = points / lato.unitsPerEm;
      const advance = (letter: string) => lato.letter(letter).advance * unit;
      // From the left stem of H to the left edge of the next H: two advances, built-in, tracking and offset of both
      // pairs.
      const apart =
        advance('H') +
        advance('I') +
        (lato.kern('H', 'I') + lato.kern('I', 'H')) * unit +
        ((2 * 20 - 12) / 1000) * points;
      expect(left(H2!) - left(H!)).toBeCloseTo(apart, 2);
      // V and A begin at the edges of their outlines: kerning of the face and −40 of the student between them.
      const outline = (letter: string) =>
        lato
          .letter(letter)
          .path.match(/-?\d+/g)!
          .map(Number)
          .filter((_, index) => index % 2 === 0);
      const edge = (letter: string) => Math.min(...outline(letter)) * unit;
      expect(left(A!) - left(V!)).toBeCloseTo(
        advance('V') + edge('A') - edge('V') + lato.kern('V', 'A') * unit + ((20 - 40) / 1000) * points,
        2,
      );
      // I of Lato is one stem, as wide and as high as its outline says.
      const numbers = lato.letter('I').path.match(/-?\d+/g)!.map(Number);
      const across = numbers.filter((_, index) => index % 2 === 0),
        up = numbers.filter((_, index) => index % 2 === 1);
      expect(right(I!) - left(I!)).toBeCloseTo((Math.max(...across) - Math.min(...across)) * unit, 2);
      expect(top(I!) - bottom(I!)).toBeCloseTo((Math.max(...up) - Math.min(...up)) * unit, 2);
    },
  );

  it('says what a pixel is on paper, and that a line at its size is at its size', async () => {
    const {
      pages: [page],
    } = await readPdf(sheetPdf(sheetWith([{ pack, size: { value: 96, unit: 'px' } }]), 'letter', now));
    expect(page!.text.replaceAll('\u2009', ' ')).toContain('96 px (72 pt on paper, 1 px being 0.75 pt)');
    expect([page!.width, page!.height]).toEqual([792, 612]);
  });

  it('is broken at word spaces where it is wider than the paper, and loses no letter', async () => {
    const long = drawnPack('HOH OHO HHH OOO HOHO');
    const { pages } = await readPdf(sheetPdf(sheetWith([{ pack: long, size: { value: 90, unit: 'pt' } }]), 'a4', now));
    const drawn = pages.flatMap(({ filled }) => filled);
    expect(drawn.length).toBeGreaterThan(1);
    // H is one outline, O two, in the drawn pack: 8 H and 8 O.
    expect(drawn.flat()).toHaveLength(8 + 2 * 8);
    expect(pages.map(({ text }) => text).join('')).toContain('Broken at word space');
    for (const outline of drawn.flat()) expect(right(outline)).toBeLessThan(842 - 50);
    // True size all the same: H of the drawn pack is 600 units wide.
    const H = drawn.flat().find((outline) => outline.length === 12)!;
    expect(right(H) - left(H)).toBeCloseTo(0.6 * 90, 2);
  });

  it('is made smaller, and says so, only where a word is wider than the paper', async () => {
    const { pages } = await readPdf(
      sheetPdf(sheetWith([{ pack: drawnPack('HOHOHOHO'), size: { value: 300, unit: 'pt' } }]), 'a4', now),
    );
    const drawn = pages.flatMap(({ filled }) => filled).flat();
    for (const outline of drawn) expect(right(outline)).toBeLessThan(842 - 50);
    const H = drawn.find((outline) => outline.length === 12)!;
    const percent = ((right(H) - left(H)) / (0.6 * 300)) * 100;
    expect(pages[0]!.text.replaceAll('\u2009', ' ')).toContain(
      `made smaller to ${percent.toFixed(1).replace(/\.0$/, '')}%`,
    );
  });
});

describe('a sheet', () => {
  const pack = drawnPack('HAVOC'.replace('C', 'L'));

  it('has a title, a language, headings, figures with words, and all that was written as text', async () => {
    const { title, language, pages } = await readPdf(
      sheetPdf(
        sheetWith([
          {
            pack,
            size: { value: 60, unit: 'pt' },
            notes: [noteOn(1, 1, 'A and V crowd.', [12]), noteOn(null, null, 'Žluťoučký, Ελένη, Шрифт: well seen.')],
          },
        ]),
        'a4',
        now,
      ),
    );
    expect(title).toBe('Critique sheet: Harbour signs, round 1');
    expect(language).toBe('en-GB');
    const text = pages.map((page) => page.text).join('\n');
    for (const words of [
      'Ada Quayle',
      'The straight pairs first.',
      'A and V crowd.',
      'Suggested offset: AV +12 (sent 0)',
      'Tobin Ashgrove',
      'Žluťoučký, Ελένη, Шрифт',
      'SIL Open Font License',
    ])
      expect(text).toContain(words);
    const roles = pages[0]!.roles;
    expect(roles.map(({ role }) => role)).toEqual(expect.arrayContaining(['Document', 'H1', 'H2', 'Figure', 'P']));
    expect(roles.find(({ role }) => role === 'Figure')!.alt).toBe(
      'The line “HAVOL” as it was sent, at its size of 60 pt. Notes: 1 on the line; 2 on AV.',
    );
  });

  it('is marked as PDF/UA-1, with its title shown in place of the file name', async () => {
    const { bytes } = await readPdf(sheetPdf(sheetWith([{ pack, size: { value: 60, unit: 'pt' } }]), 'a4', now));
    const file = Buffer.from(bytes).toString('latin1');
    expect(file).toMatch(/<pdfuaid:part>1<\/pdfuaid:part>/);
    expect(file).toContain('/DisplayDocTitle true');
  });

  it('goes on overleaf with long notes, and loses not a word of them', async () => {
    const words = Array.from({ length: 300 }, (_, index) => `word${index}`);
    const { pages } = await readPdf(
      sheetPdf(
        sheetWith([
          {
            pack,
            size: { value: 60, unit: 'pt' },
            notes: [noteOn(0, 0, words.join(' ')), noteOn(2, 3, words.join(' '))],
          },
        ]),
        'letter',
        now,
      ),
    );
    expect(pages.length).toBeGreaterThan(1);
    const text = pages
      .map((page) => page.text)
      .join('\n')
      .replaceAll('\n', ' ');
    for (const word of words) expect(text.split(new RegExp(`\\b${word}\\b`)).length - 1, word).toBe(2);
    for (const { right: end, width } of pages) expect(end).toBeLessThanOrEqual(width - 53);
  });

  it('is the same bytes for the same sheet at the same instant', async () => {
    const [one, other] = await Promise.all(
      [1, 2].map(() => readPdf(sheetPdf(sheetWith([{ pack, size: { value: 60, unit: 'pt' } }]), 'a4', now))),
    );
    expect(Buffer.from(one!.bytes).equals(Buffer.from(other!.bytes))).toBe(true);
  });
});

describe('a class set', () => {
  const pack = drawnPack('HOT');
  const student = (index: number) => ({
    who: `Student ${index}`,
    read: async () =>
      sheetWith([{ pack, size: { value: 60, unit: 'pt' }, notes: [noteOn(0, 0, 'Closer.')] }], {
        who: `Student ${index}`,
      }),
  });

  it('has contents with the pages on which the sheets are, links to them, and a bookmark each', async () => {
    const students = Array.from({ length: 45 }, (_, index) => student(index + 1));
    const { pages, bookmarks } = await readPdf(
      classSetPdf({ course: 'Lettering', exercise: 'Harbour signs', roundNumber: 1, students }, 'a4', now),
    );
    expect(bookmarks).toEqual(students.map(({ who }) => who));
    const contents = pages.filter(({ links }) => links > 0);
    // Every entry is inside the list, which comes after the heading.
    expect(contents[0]!.roles.map(({ role }) => role).slice(0, 8)).toEqual([
      'Root',
      'Document',
      'Sect',
      'H1',
      'P',
      'TOC',
      'TOCI',
      'Link',
    ]);
    expect(contents.reduce((sum, { links }) => sum + links, 0)).toBe(45);
    expect(pages).toHaveLength(contents.length + 45);
    const [, number] = /Student 30\s+(\d+)/.exec(contents.map(({ text }) => text).join('\n'))!;
    expect(pages[Number(number) - 1]!.text).toContain('Student 30');
  });

  /** A class set of 200 that counts how many sheets were asked for; each is asked for twice. */
  function counted() {
    const asked = { sheets: 0 };
    const students = Array.from({ length: 200 }, (_, index) => ({
      ...student(index),
      read: () => {
        asked.sheets += 1;
        return student(index).read();
      },
    }));
    return {
      asked,
      reader: classSetPdf(
        { course: 'Lettering', exercise: 'Harbour signs', roundNumber: 1, students },
        'a4',
        now,
      ).getReader(),
    };
  }
  const wait = (ms: number) =>
    new Promise((resolve) => {
      setTimeout(resolve, ms);
    });

  it('waits for its reader: no more sheets are made than are taken', async () => {
    const { asked, reader } = counted();
    await reader.read();
    for (let before = -1; before !== asked.sheets;) {
      before = asked.sheets;
      await wait(300);
    }
    expect(asked.sheets).toBeGreaterThan(200);
    expect(asked.sheets).toBeLessThan(300);
    await reader.cancel();
  });

  it('stops when its reader leaves, also while pages are only counted', async () => {
    const { asked, reader } = counted();
    await reader.read();
    await reader.cancel();
    const stopped = asked.sheets;
    expect(stopped).toBeLessThan(200);
    await wait(300);
    expect(asked.sheets - stopped).toBeLessThan(3);
  });
});
