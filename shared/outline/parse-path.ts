import { MeasureError } from '@/shared/measure-error';

/** One absolute drawing command with its numbers: M x y, L x y, Q cx cy x y, C c1x c1y c2x c2y x y, Z. */
export type Command = { letter: 'M' | 'L' | 'Q' | 'C' | 'Z'; numbers: number[] };

const COUNTS = { M: 2, L: 2, Q: 4, C: 6, Z: 0 } as const;

/**
 * Reads the path text of a pack (absolute M L Q C Z, whole font units) into commands.
 * @throws MeasureError `bad-path` for anything else, quoting the piece that was not understood.
 */
export function parsePath(text: string): Command[] {
  const pieces = text.match(/[MLQCZ][^MLQCZ]*/g) ?? [];
  if (pieces.join('') !== text) fail(text);
  return pieces.map((piece, index) => {
    const letter = piece[0] as Command['letter'];
    const numbers = (piece.slice(1).match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
    if (numbers.length !== COUNTS[letter] || !numbers.every(Number.isFinite) || (index === 0 && letter !== 'M'))
      fail(piece);
    return { letter, numbers };
  });
}

function fail(piece: string): never {
  throw new MeasureError(
    'bad-path',
    `The outline has a part that is no drawing command: “${piece.slice(0, 60)}”. Build the pack again from its face.`,
    piece.slice(0, 200),
  );
}
