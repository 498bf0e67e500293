import { type Pack, PackError, parsePack } from '@/shared/schemas/pack';
import { FaceError, quoted } from './face-error';

/** Lettering that is not type: each letter drawn, with the room around it, in whole units of its own grid. */
export type LetteringSource = {
  kind: 'lettering';
  unitsPerEm: number;
  vertical: Pack['vertical'];
  letters: { cluster: string; advance: number; path: string; wordSpaceAfter?: number }[];
};

/** The pack of a drawn line. It has no built-in values and no control letters: a drawing is its own reference. */
export function packLettering(source: LetteringSource, text: string): Pack {
  const drawn = source.letters.map((letter) => letter.cluster).join('');
  if (drawn.normalize('NFC') !== text.normalize('NFC').replace(/\s/g, '')) {
    throw new FaceError(
      'bad-text',
      `The text ${quoted(text)} does not name the drawn letters ${quoted(drawn)} one by one.`,
    );
  }
  const pairs = source.letters.slice(0, -1);
  try {
    return parsePack({
      format: 'kerncrit-pack',
      version: 1,
      kind: 'svg',
      text: text.normalize('NFC').trim(),
      unitsPerEm: source.unitsPerEm,
      vertical: source.vertical,
      face: null,
      glyphs: source.letters.map(({ cluster, advance, path }) => ({
        cluster: cluster.normalize('NFC'),
        advance,
        path,
      })),
      letters: source.letters.map((_, index) => index),
      builtIn: pairs.map(() => 0),
      wordSpace: pairs.map((letter) => letter.wordSpaceAfter ?? 0),
      control: { H: null, O: null, n: null, o: null },
      ligatures: [],
    });
  } catch (error) {
    if (error instanceof PackError) throw new FaceError('bad-pack', error.message);
    throw error;
  }
}
