import { FaceError, quoted } from '../face-error';
import type { HarfBuzz } from '../harfbuzz';
import type { Face } from '../read-face';
import { hasGposKerning, LANGUAGE } from './gpos-kerning';
import { legacyKernOf } from './legacy-kern';
import type { Letter, Line } from './split-line';

/** A glyph of a letter, placed from the letter's own origin, in font units. */
export type PlacedGlyph = { id: number; x: number; y: number };

/** A letter as shaped by the face. `origin` is its position in the line. */
export type SetLetter = { glyphs: PlacedGlyph[]; origin: number; advance: number };

/**
 * How a line is set. A browser does the same under
 * `font-kerning: normal; font-variant-ligatures: none; font-variant-numeric: proportional-nums`.
 * Contextual forms are off with the ligatures, as in CSS: they are chosen for neighbours at the built-in distance.
 */
const WITHOUT_LIGATURES = '+pnum -liga -clig -dlig -hlig -calt';

/** Sets the letters of a line, with or without kerning. Throws `no-outline` for a letter that the face lacks. */
export function shapeLine(face: Face, line: Line, kerning: boolean): SetLetter[] {
  const letters: SetLetter[] = [];
  let origin = 0;
  for (const run of runsOf(line)) {
    const glyphs = shape(face, run.text, run.script, `${kerning ? '+kern' : '-kern'} ${WITHOUT_LIGATURES}`);
    if (kerning) applyLegacyKern(face, run.script, glyphs);
    const set = gather(run, glyphs, origin);
    letters.push(...set.letters);
    origin = set.end;
  }
  return letters;
}

/** Runs of letters that running text would have set as one ligature, by letter position. */
export function ligaturesOf(face: Face, line: Line): { from: number; to: number; text: string }[] {
  let first = 0;
  return runsOf(line).flatMap((run) => {
    const starts = new Set(shape(face, run.text, run.script, '+pnum').map((glyph) => glyph.cluster));
    const found: { from: number; to: number; text: string }[] = [];
    run.letters.forEach((letter, index) => {
      if (index === 0 || starts.has(letter.from - run.from)) return;
      const last = found.at(-1);
      if (last && last.to === first + index - 1)
        Object.assign(last, { to: first + index, text: last.text + letter.cluster });
      else
        found.push({
          from: first + index - 1,
          to: first + index,
          text: (run.letters[index - 1]?.cluster ?? '') + letter.cluster,
        });
    });
    first += run.letters.length;
    return found;
  });
}

type Run = { text: string; from: number; script: string; letters: Letter[] };

/**
 * Browsers shape each script by itself, so kerning does not reach from one to the next. Spaces stay with the run
 * before.
 */
function runsOf(line: Line): Run[] {
  const runs: Run[] = [];
  line.letters.forEach((letter, index) => {
    const last = runs.at(-1);
    if (last?.script === letter.script) last.letters.push(letter);
    else runs.push({ text: '', from: index === 0 ? 0 : letter.from, script: letter.script, letters: [letter] });
  });
  return runs.map((run, index) => ({
    ...run,
    text: line.text.slice(run.from, runs[index + 1]?.from ?? line.text.length),
  }));
}

type ShapedGlyph = { id: number; cluster: number; advance: number; x: number; y: number };

const parsedFeatures = new Map<string, HarfBuzz.Feature[]>();

/** Features in the way CSS and HarfBuzz write them, `+kern -liga`, parsed once. */
function featuresOf(harfbuzz: typeof HarfBuzz, names: string): HarfBuzz.Feature[] {
  const known =
    parsedFeatures.get(names) ?? names.split(' ').flatMap((name) => harfbuzz.Feature.fromString(name) ?? []);
  parsedFeatures.set(names, known);
  return known;
}

function shape(face: Face, text: string, script: string, features: string): ShapedGlyph[] {
  const { harfbuzz, font } = face;
  const buffer = new harfbuzz.Buffer();
  buffer.addText(text);
  buffer.setDirection(harfbuzz.Direction.LTR);
  buffer.setScript(script);
  buffer.setLanguage(LANGUAGE);
  harfbuzz.shape(font, buffer, featuresOf(harfbuzz, features));
  return buffer.getGlyphInfosAndPositions().map((glyph) => ({
    id: glyph.codepoint,
    cluster: glyph.cluster,
    advance: glyph.xAdvance ?? 0,
    x: glyph.xOffset ?? 0,
    y: glyph.yOffset ?? 0,
  }));
}

/** As HarfBuzz does with its own reader of the table: between neighbours, marks passed over. */
function applyLegacyKern(face: Face, script: string, glyphs: ShapedGlyph[]): void {
  if (face.legacyKern.subtables.length === 0 || hasGposKerning(face.harfbuzz, face.font.face, script)) return;
  const letters = glyphs.filter((glyph) => face.font.face.getGlyphClass(glyph.id) !== face.harfbuzz.GlyphClass.MARK);
  letters.forEach((left, index) => {
    const right = letters[index + 1];
    if (right) left.advance += legacyKernOf(face.legacyKern, left.id, right.id);
  });
}

/** Glyphs by letter. The white space between two letters belongs to neither. */
function gather(run: Run, glyphs: ShapedGlyph[], start: number): { letters: SetLetter[]; end: number } {
  const letters: SetLetter[] = run.letters.map(() => ({ glyphs: [], origin: Number.NaN, advance: 0 }));
  let pen = start;
  for (const glyph of glyphs) {
    const index = run.letters.findIndex(
      (letter) => glyph.cluster >= letter.from - run.from && glyph.cluster < letter.to - run.from,
    );
    const letter = letters[index];
    if (letter) {
      if (glyph.id === 0) throw missing(run.letters[index]);
      if (letter.glyphs.length === 0) letter.origin = pen + glyph.x;
      letter.glyphs.push({ id: glyph.id, x: pen + glyph.x - letter.origin, y: glyph.y });
      letter.advance += glyph.advance;
    } else if (glyph.id === 0) {
      throw new FaceError('no-outline', 'The face has no space. Choose another face, or a line of one word.');
    }
    pen += glyph.advance;
  }
  const lost = letters.findIndex((letter) => letter.glyphs.length === 0);
  if (lost >= 0)
    throw new FaceError(
      'unsupported',
      `The face joins ${quoted(run.letters[lost]?.cluster ?? '')} with its neighbour even without ligatures, so there is no gap to set. Choose another face.`,
    );
  return { letters, end: pen };
}

function missing(letter: Letter | undefined): FaceError {
  return new FaceError(
    'no-outline',
    `The face has no letter ${quoted(letter?.cluster ?? '')}. Choose another face or another line.`,
  );
}
