import { runsOf, type Style } from './faces';

/** How wide a text is set, in points. */
export type Widths = (text: string, style: Style) => number;

/**
 * A text in lines no wider than `width`, broken at spaces and at line ends that were typed; a word wider than the
 * column is broken anywhere, since nothing may be lost. Every line but a paragraph's last ends with a space, for those
 * who take the text out.
 */
export function brokenText(text: string, style: Style, width: number, widths: Widths): string[] {
  return text
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .flatMap((paragraph) => paragraphLines(paragraph.replace(/[\t\f\v]+/g, ' ').trimEnd(), style, width, widths));
}

function paragraphLines(text: string, style: Style, width: number, widths: Widths): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/).flatMap((whole) => brokenWord(whole, style, width, widths))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widths(longer, style) > width) {
      lines.push(`${line} `);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}

function brokenWord(word: string, style: Style, width: number, widths: Widths): string[] {
  if (widths(word, style) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const { segment } of graphemes.segment(word)) {
    if (piece !== '' && widths(piece + segment, style) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += segment;
  }
  return [...pieces, piece];
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Whether every character has a face. */
export const canSet = (text: string, style: Style): boolean => runsOf(text, style).every(({ covered }) => covered);
