import { buildPack, buildPairs, type FaceSource, inspectFace } from '@/lib/face/build-pack';
import type { PairTable } from '@/lib/face/compose-pairs';
import { letOthersIn } from '@/lib/let-others-in';
import { apparentGap, visibleWhite } from '@/shared/measure/apparent-gap';
import { prepareFace } from '@/shared/measure/prepared-face';
import type { SideKind } from '@/shared/schemas/measure';
import type { Pack } from '@/shared/schemas/pack';
import { pairKindsOf } from '@/shared/exercise/pair-kinds';
import type { PairKind } from '@/shared/schemas/word-search';

/** One pair in one face, lengths in 1/1000 em. */
export type PairFigures = {
  builtIn: number;
  /** Apparent gap by the sidebearings alone, and as the face sets the pair. */
  unkerned: number;
  asSet: number;
  kinds: readonly PairKind[];
  /** The two sides that face each other. */
  sides: readonly [SideKind, SideKind];
};

/** A face as the finder knows it: what letters it has, and every pair measured so far, each once. */
export type FacePairs = {
  has: (letter: string) => boolean;
  /** Measures those of the pairs that are not known yet, and gives them all. Pairs of letters that the face has. */
  measure: (pairs: Iterable<string>) => Promise<ReadonlyMap<string, PairFigures>>;
  /** A text of measured pairs, as it is drawn in a list: not split and shaped as a line of an exercise is. */
  draw: (text: string) => Pack;
};

/** Faces whose pairs are kept, the one used last at the end: about 1 MB each. */
const MOST_FACES = 16;
const known = new Map<string, Promise<FacePairs>>();

/** Throws FaceError for a face that can't be opened. */
export function facePairsOf(source: FaceSource & { kind: 'catalogue' }): Promise<FacePairs> {
  const name = JSON.stringify([source.key, Object.entries(source.axes ?? {}).sort()]);
  const pairs = known.get(name) ?? readFace(source);
  known.delete(name);
  known.set(name, pairs);
  pairs.catch(() => known.delete(name));
  for (const oldest of known.keys()) if (known.size > MOST_FACES) known.delete(oldest);
  return pairs;
}

async function readFace(source: FaceSource): Promise<FacePairs> {
  const { coverage } = await inspectFace(source);
  const spaced = await buildPack(source, 'n n');
  const glyphs = new Map<string, PairTable['glyphs'][number]>(spaced.glyphs.map((glyph) => [glyph.cluster, glyph]));
  const letters = new Set(
    coverage.flatMap(([first, last]) => Array.from({ length: last - first + 1 }, (_, at) => first + at)),
  );
  const measured = new Map<string, PairFigures>();
  return {
    has: (letter) => letters.has(letter.codePointAt(0)!),
    measure: async (pairs) => {
      const missing = [...new Set(pairs)].filter((pair) => !measured.has(pair));
      // A face process answers other people's lines too, so it is never asked for very many at once.
      for (let from = 0; from < missing.length; from += AT_ONCE)
        await measureInto(measured, glyphs, source, missing.slice(from, from + AT_ONCE));
      return measured;
    },
    draw: (text) => drawn(text, spaced, glyphs, measured),
  };
}

const AT_ONCE = 4_000;

async function measureInto(
  measured: Map<string, PairFigures>,
  glyphs: Map<string, PairTable['glyphs'][number]>,
  source: FaceSource,
  pairs: string[],
): Promise<void> {
  const table = await buildPairs(source, pairs);
  for (const glyph of table.glyphs) glyphs.set(glyph.cluster, glyph);
  const face = prepareFace(table);
  const scale = 1000 / table.unitsPerEm;
  for (const [index, pair] of table.pairs.entries()) {
    await letOthersIn();
    const [left, right] = [face.shapeOf(pair.left), face.shapeOf(pair.right)];
    const white = visibleWhite(left, right, face.depths),
      builtIn = pair.builtIn * scale;
    const [a, b] = [table.glyphs[pair.left]!.cluster, table.glyphs[pair.right]!.cluster];
    measured.set(pairs[index]!, {
      builtIn,
      unkerned: apparentGap(white, 0),
      asSet: apparentGap(white, builtIn),
      kinds: pairKindsOf(left, right, [a, b], face.stem),
      sides: [left.sides.right, right.sides.left],
    });
  }
}

function drawn(
  text: string,
  spaced: Pack,
  glyphs: ReadonlyMap<string, PairTable['glyphs'][number]>,
  measured: ReadonlyMap<string, PairFigures>,
): Pack {
  const letters = [...text].filter((letter) => letter !== ' ');
  const controls = spaced.glyphs.map(({ cluster }) => cluster);
  const used = [...new Set([...letters, ...controls])];
  const gaps = [...text].slice(1).flatMap((letter, index) => {
    const before = text[index]!;
    if (letter === ' ') return [];
    if (before === ' ') return [{ builtIn: 0, wordSpace: spaced.wordSpace[0]! }];
    const thousandths = measured.get(before + letter)?.builtIn ?? 0;
    return [{ builtIn: Math.round((thousandths * spaced.unitsPerEm) / 1000), wordSpace: 0 }];
  });
  const place = (letter: string) => used.indexOf(letter);
  return {
    ...spaced,
    text,
    glyphs: used.map((letter) => glyphs.get(letter)!),
    letters: letters.map(place),
    builtIn: gaps.map(({ builtIn }) => builtIn),
    wordSpace: gaps.map(({ wordSpace }) => wordSpace),
    control: {
      H: controlPlace('H'),
      O: controlPlace('O'),
      n: controlPlace('n'),
      o: controlPlace('o'),
    },
    usual: undefined,
    ligatures: [],
  };
  function controlPlace(letter: string): number | null {
    const at = place(letter);
    return at < 0 ? null : at;
  }
}
