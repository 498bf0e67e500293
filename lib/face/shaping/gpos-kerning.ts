import type { HarfBuzz } from '../harfbuzz';

/** Index of the default language system in HarfBuzz's answers (hb-ot-layout, HB_OT_LAYOUT_DEFAULT_LANGUAGE_INDEX). */
const DEFAULT_LANGUAGE = 0xffff;

/**
 * Whether GPOS has a `kern` feature for this script (ISO 15924) in the language that lines are set in.
 * Where it has none, browsers fall back to the legacy table; the choice is made script by script.
 */
export function hasGposKerning(harfbuzz: typeof HarfBuzz, face: HarfBuzz.Face, script: string): boolean {
  const scripts = face.getTableScriptTags('GPOS');
  const wanted = harfbuzz.otTagsFromScriptAndLanguage(script, LANGUAGE);
  const chosen = [...wanted.scriptTags, 'DFLT', 'dflt', 'latn'].find((tag) => scripts.includes(tag));
  if (chosen === undefined) return false;
  const scriptIndex = scripts.indexOf(chosen);
  const languages = face.getScriptLanguageTags('GPOS', scriptIndex);
  const own = wanted.languageTags.find((tag) => languages.includes(tag));
  const language = own === undefined ? DEFAULT_LANGUAGE : languages.indexOf(own);
  return face.getLanguageFeatureTags('GPOS', scriptIndex, language).includes('kern');
}

/** Lines are set as English text: pages say lang="en" around a specimen. */
export const LANGUAGE = 'en';
