import { readFileSync } from 'node:fs';
import { IterableHunspellReader } from 'hunspell-reader';
import naughty from 'naughty-words/en.json';
import { describe, expect, it } from 'vitest';
import { FREQUENCY, OBSCENE, wordLanguages } from '@/lib/word-finder/languages';
import { makeList, MOST_WORDS, obsceneTest } from '@/lib/word-finder/make-list';
import { languageCodes } from '@/shared/schemas/word-search';

const inPackage = (name: string, file: string) => `node_modules/${name}/${file}`;

describe('the words of a language', () => {
  it('are forms of the dictionary, as all of its entries expanded give them', async () => {
    const { words, ranked } = await makeList('en');
    const reader = await IterableHunspellReader.createFromFiles(
      inPackage('dictionary-en', 'index.aff'),
      inPackage('dictionary-en', 'index.dic'),
    );
    const all = new Set(reader.seqWords());
    expect(words.filter((word) => !all.has(word))).toEqual([]);
    expect(words).toHaveLength(MOST_WORDS);
    expect(new Set(words).size).toBe(MOST_WORDS);
    // Forms, not stems: an ending, a beginning, both; and a name in its own writing.
    const common = new Set(words.slice(0, ranked));
    for (const word of ['available', 'working', 'unknown', 'returned', 'cities', 'Paris', 'English'])
      expect([word, common.has(word)]).toEqual([word, true]);
    expect(common.has('english')).toBe(false);
  }, 30_000);

  it('are written as German writes them', async () => {
    const { words, ranked } = await makeList('de');
    const common = new Set(words.slice(0, ranked));
    for (const word of ['Freunde', 'Tür', 'hätte', 'gegangen', 'groß', 'Wasser'])
      expect([word, common.has(word)]).toEqual([word, true]);
    expect(common.has('wasser')).toBe(false);
  }, 30_000);

  it('hold none of the obscene list', async () => {
    const { words } = await makeList('en');
    const list = new Set(naughty.map((word) => word.toLowerCase()));
    expect(words.filter((word) => list.has(word.toLowerCase()))).toEqual([]);
  }, 30_000);
});

it('refuses a word of the list, its forms, and what it may be read as', () => {
  const isObscene = obsceneTest(['drat', 'blast', 'bum']);
  expect(['drat', 'Drat', 'blasted', 'burn', 'clrat'.replace('cl', 'd')].filter(isObscene)).toHaveLength(5);
  expect(['drats', 'stirred', 'sandblast', 'blas'].filter(isObscene)).toEqual([]);
});

describe('licences', () => {
  it.each([...wordLanguages.map(({ dictionary }) => dictionary), FREQUENCY, OBSCENE].map((one) => [one.package, one]))(
    'of %s is named as its package states it',
    (name, { licence }) => {
      const manifest = JSON.parse(readFileSync(inPackage(name, 'package.json'), 'utf8')) as { license: string };
      expect(licence).toBe(manifest.license);
      expect(readFileSync('lib/word-finder/README.md', 'utf8')).toContain(name.replace(/-[a-z]{2}$/, ''));
    },
  );
  it('one dictionary a language', () => {
    expect(wordLanguages.map(({ code }) => code)).toEqual([...languageCodes]);
  });
});
