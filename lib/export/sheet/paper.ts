import * as z from 'zod/mini';

/** Paper that sheets are made for, lying on its long side: lines of type are wide. */
export const paperSchema = z._default(z.enum(['a4', 'letter'], 'Choose a4 or letter.'), 'a4');
export type PaperName = z.infer<typeof paperSchema>;

/** Points (1/72 inch). A4 is 297 × 210 mm by ISO 216, US Letter 11 × 8.5 inches. */
const sizes: Record<PaperName, { width: number; height: number }> = {
  a4: { width: (297 / 25.4) * 72, height: (210 / 25.4) * 72 },
  letter: { width: 792, height: 612 },
};

/**
 * The columns of a page, in points from its upper left corner. `main` holds the lines, `margin` the notes beside them.
 */
export type Columns = {
  width: number;
  height: number;
  top: number;
  bottom: number;
  left: number;
  right: number;
  mainWidth: number;
  marginLeft: number;
  marginWidth: number;
};

/** At most this share of a page's height goes to one piece of a line. */
export const tallest = 0.55;

export function columnsOf(paper: PaperName): Columns {
  const { width, height } = sizes[paper];
  const [left, top, foot, marginWidth, gutter] = [54, 62, 50, 178, 30];
  const right = width - left;
  const marginLeft = right - marginWidth;
  return {
    width,
    height,
    top,
    bottom: height - foot,
    left,
    right,
    mainWidth: marginLeft - gutter - left,
    marginLeft,
    marginWidth,
  };
}

/** CSS Values and Units 3, 6.2: 96 px are an inch, 72 pt are an inch. */
export const pointsOf = ({ value, unit }: { value: number; unit: 'px' | 'pt' }): number =>
  unit === 'px' ? value * 0.75 : value;
