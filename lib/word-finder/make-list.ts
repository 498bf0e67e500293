import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type AffWord, IterableHunspellReader } from 'hunspell-reader';
import { projectRoot } from '@/lib/face/project-root';
import type { LanguageCode } from '@/shared/schemas/word-search';
import { misreadings } from './misread';
import { proposeStems } from './propose-stems';
import { FREQUENCY, languageOf, OBSCENE } from './languages';

/** The most words of a list. */
export const MOST_WORDS = 50_000;
/** Letters of a word; longer ones are no line for a class. */
const SHORTEST = 2;
const LONGEST = 16;
/** The common words first, commonest first; `ranked` says how many they are. */
export type MadeList = { words: string[]; ranked: number };

/**
 * The words of a language, at most 50,000: the common ones that its dictionary knows, in the dictionary's own writing,
 * then an even sample of its other stems, then of their forms. Takes seconds and a core: see word-list.ts for the way in.
 */
export async function makeList(code: LanguageCode): Promise<MadeList> {
  const language = languageOf(code);
  const reader = await IterableHunspellReader.createFromFiles(
    inPackage(language.dictionary.package, 'index.aff'),
    inPackage(language.dictionary.package, 'index.dic'),
  );
  const isObscene = obsceneTest(await obsceneWords(code));
  const taken = new Set<string>();
  const take = (word: string) => {
    if (isWord(word) && !isObscene(word)) taken.add(word);
  };
  /** The stem alone at depth 0; with an ending and a beginning without. */
  const formsOf = (line: string, depth?: number) => reader.aff.applyRulesToDicEntry(line, depth).filter(isPlainWord);

  const proposals = proposeStems(reader.aff.affInfo, reader.dic);
  for (const common of await commonWords(language.frequencyFile)) {
    const writings = new Set(
      proposals(common).flatMap((line) =>
        formsOf(line).flatMap(({ word }) => (word.toLowerCase() === common ? [word] : [])),
      ),
    );
    // Where a word is written both ways (sie, Sie), the small letters are the plain word.
    const [writing] = [...writings].sort((a, b) => Number(a !== common) - Number(b !== common));
    if (writing) take(writing);
  }
  const ranked = taken.size;
  const rest = evenly(reader.dic);
  for (const depth of [0, 1])
    for (const line of rest) {
      if (taken.size >= MOST_WORDS) break;
      for (const { word } of formsOf(line, depth)) take(word);
    }
  return { words: [...taken].slice(0, MOST_WORDS), ranked };
}

/** Neither a part of compounds only, nor a mark against a word: the dictionary forbids, warns of or never offers it. */
function isPlainWord({ flags }: AffWord): boolean {
  return !(
    flags.isForbiddenWord ||
    flags.isOnlyAllowedInCompound ||
    flags.isNeedAffix ||
    flags.isWarning ||
    flags.isNoSuggest
  );
}

/** Latin letters alone, with at most one capital, the first: no abbreviation, hyphen or numeral. */
function isWord(word: string): boolean {
  return word.length >= SHORTEST && word.length <= LONGEST && /^\p{Script=Latin}\p{Ll}+$/u.test(word);
}

async function commonWords(file: string): Promise<Set<string>> {
  const text = await readFile(inPackage(FREQUENCY.package, file), 'utf8');
  return new Set(text.split(/\r?\n/).map((word) => word.trim().normalize('NFC').toLowerCase()));
}

/** The list of the language itself and the English one, which is understood everywhere. */
async function obsceneWords(code: LanguageCode): Promise<string[]> {
  const lists = await Promise.all(
    [...new Set([code, 'en'])].map(async (one) => {
      const text = await readFile(inPackage(OBSCENE.package, `${one}.json`), 'utf8');
      return JSON.parse(text) as string[];
    }),
  );
  return lists.flat().map((word) => word.toLowerCase());
}

/** From this length on, a word that begins with one of the list is refused with it (its plural, its participle). */
const STEM_LENGTH = 5;

/**
 * Whether a word is on the list, begins with a longer one of it, or is read as one: rn as m, cl as d, and in capitals
 * LI as U.
 */
export function obsceneTest(list: readonly string[]): (word: string) => boolean {
  const all = new Set(list);
  const long = list.filter((word) => word.length >= STEM_LENGTH);
  const stems = new Set(long);
  const lengths = [...new Set(long.map(({ length }) => length))];
  return (written) => {
    const word = written.toLowerCase();
    return [word, ...misreadings(word), ...misreadings(written.toUpperCase()).map((read) => read.toLowerCase())].some(
      (read) => all.has(read) || lengths.some((length) => stems.has(read.slice(0, length))),
    );
  };
}

/** The same elements in an order that has nothing to do with the alphabet, and is the same each time. */
function evenly(elements: readonly string[]): string[] {
  return elements
    .map((element) => ({ element, at: scatter(element) }))
    .sort((a, b) => a.at - b.at)
    .map(({ element }) => element);
}

/** FNV-1a over code units, 32 bits. */
function scatter(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  return hash >>> 0;
}

function inPackage(name: string, file: string): string {
  return join(projectRoot(), 'node_modules', name, file);
}
