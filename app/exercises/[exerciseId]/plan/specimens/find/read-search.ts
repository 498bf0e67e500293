import { parseSizes } from '@/shared/exercise/sizes';
import { languageCodes, mostExamples, pairKinds, type PairKind, type WordSearch } from '@/shared/schemas/word-search';
import type { Size } from '@/shared/schemas/spacing';

export type Asked = Record<string, string | string[] | undefined>;

/** What an address asks for. What it does not say, or says wrongly, is as when the page is first opened. */
export type ReadSearch = WordSearch & { face: string; size: Size; language: (typeof languageCodes)[number] };

/** Pairs to look for by a lesson: its kinds and examples. */
export const lessons: { title: string; kinds: PairKind[]; examples: string }[] = [
  { title: 'Straight and round', kinds: ['straight-straight', 'straight-round', 'round-round'], examples: '' },
  { title: 'Diagonals', kinds: [], examples: 'AV VA AW WA AY YA' },
  { title: 'Open sides', kinds: [], examples: 'To Te Ty LT LY ra ry' },
  { title: 'Serifs', kinds: ['serifs'], examples: '' },
  { title: 'Accents', kinds: ['accent-under-arm'], examples: '' },
  { title: 'Figures', kinds: ['one-among-figures'], examples: '' },
  { title: 'Letters that close up', kinds: [], examples: 'rn cl' },
];

export function readSearch(asked: Asked): ReadSearch {
  const text = (name: string) => [asked[name] ?? ''].flat()[0]!.trim();
  const all = (name: string) => [asked[name] ?? []].flat();
  const one = <Of extends string>(name: string, of: readonly Of[], usual: Of): Of =>
    of.find((choice) => choice === text(name)) ?? usual;
  const length = (name: string, usual: number) => {
    const typed = Number(text(name));
    return Number.isInteger(typed) && typed >= 2 && typed <= 16 ? typed : usual;
  };
  const lettering = one('lettering', ['fitting', 'written', 'capital', 'capitals'] as const, 'fitting');
  return {
    face: text('face') || 'lato-400',
    size: sizeOf(text('size')),
    language: one('language', languageCodes, 'en'),
    examples: examplesIn(text('examples')).slice(0, mostExamples),
    alike: text('alike') === 'yes',
    kinds: pairKinds.filter((kind) => all('kinds').includes(kind)),
    lettering: lettering === 'fitting' ? null : lettering,
    shortest: length('shortest', 3),
    longest: length('longest', 10),
    names: one('names', ['with', 'without', 'only'] as const, 'with'),
    words: text('words') === '2' ? 2 : 1,
    order: one('order', ['pairs', 'uneven', 'common'] as const, 'pairs'),
  };
}

/** Pairs as people type them: “AV, To rn”. What is not two letters is passed over. */
function examplesIn(text: string): string[] {
  const typed = text.normalize('NFC').split(/[\s,;]+/);
  return [...new Set(typed.filter((pair) => /^[\p{L}\p{N}]{2}$/u.test(pair)))];
}

function sizeOf(text: string): Size {
  try {
    return parseSizes(text)[0]!;
  } catch {
    return { value: 72, unit: 'px' };
  }
}
