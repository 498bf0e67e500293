import { letOthersIn } from '@/lib/let-others-in';
import type { Lettering } from '@/shared/schemas/word-search';
import type { WordList } from './word-list';

/** All words of a list in one lettering, with their pairs numbered, so that a search looks nothing up by name. */
export type LetteredList = {
  texts: readonly string[];
  /** Every pair that occurs, once. */
  pairs: readonly string[];
  /** Places in `pairs`, word after word; those of word i from `starts[i]` to `starts[i + 1]`. */
  pairAt: Uint16Array;
  starts: Uint32Array;
};

const made = new WeakMap<readonly string[], Map<Lettering, Promise<LetteredList>>>();

/** Made once a list and lettering, in parts: about 2 MB and 50 ms for 50,000 words. */
export function letteredList({ words }: Pick<WordList, 'words'>, lettering: Lettering): Promise<LetteredList> {
  const own = made.get(words) ?? new Map<Lettering, Promise<LetteredList>>();
  made.set(words, own);
  const known = own.get(lettering) ?? make(words, lettering);
  own.set(lettering, known);
  return known;
}

async function make(words: readonly string[], lettering: Lettering): Promise<LetteredList> {
  const texts: string[] = [];
  const pairs: string[] = [];
  const places = new Map<number, number>();
  const starts = new Uint32Array(words.length + 1);
  let pairAt = new Uint16Array(8 * words.length),
    end = 0;
  for (const [at, word] of words.entries()) {
    if (at % 500 === 0) await letOthersIn();
    const text = lettered(word, lettering);
    texts.push(text);
    if (end + text.length > pairAt.length) {
      const longer = new Uint16Array(2 * pairAt.length + text.length);
      longer.set(pairAt);
      pairAt = longer;
    }
    for (let index = 1; index < text.length; index += 1) {
      const code = text.charCodeAt(index - 1) * 0x10000 + text.charCodeAt(index);
      let place = places.get(code);
      if (place === undefined) {
        place = pairs.push(text.slice(index - 1, index + 1)) - 1;
        places.set(code, place);
      }
      pairAt[end] = place;
      end += 1;
    }
    starts[at + 1] = end;
  }
  return { texts, pairs, pairAt: pairAt.slice(0, end), starts };
}

function lettered(word: string, lettering: Lettering): string {
  if (lettering === 'written') return word;
  return lettering === 'capitals' ? word.toUpperCase() : word[0]!.toUpperCase() + word.slice(1);
}

export function isCapital(letter: string): boolean {
  return letter !== letter.toLowerCase();
}
