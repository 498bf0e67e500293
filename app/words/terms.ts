import type { GapMark } from '../_line/LineDrawing';

export type DrawnLine = {
  text: string;
  tracking?: number;
  /** Offsets from the first gap on; gaps not named are left alone. */
  offsets?: number[];
  marks?: GapMark[];
  white?: 'between' | 'inside' | 'both';
  label?: string;
};

/** A small sheet of one or more lines in one face of the catalogue. */
export type Drawing = { face?: string; lines: DrawnLine[]; caption: string };

export type Term = { id: string; word: string; meaning: string; drawing?: Drawing };

export { whiteTerms } from './white-terms';
export { numberTerms } from './number-terms';
export { lookingTerms } from './looking-terms';
export { courseTerms } from './course-terms';
