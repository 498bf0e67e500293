import type { Columns } from './paper';
import type { Element, Op, SheetPage } from './page';
import type { Style } from './faces';
import { brokenText, canSet, type Widths } from './setter';

/** A place on the sheet's pages. */
export type Place = { page: number; y: number };

/** Lines of text that belong together; each keeps its own style. */
export type TextLine = { text: string; style: Style; ink: string; indent?: number };

/** The pages of one sheet as they fill up. Everything that is put on them stays within `columns`. */
export class Layout {
  readonly pages: SheetPage[] = [];

  constructor(
    readonly columns: Columns,
    readonly widths: Widths,
  ) {
    this.pageAt(0);
  }

  pageAt(index: number): SheetPage {
    while (this.pages.length <= index) this.pages.push({ elements: [], furniture: [] });
    return this.pages[index]!;
  }

  get start(): Place {
    return { page: 0, y: this.columns.top };
  }

  /** The place itself where `height` fits under it, else the top of the next page. */
  withRoom(place: Place, height: number): Place {
    return place.y + height <= this.columns.bottom + 0.01 || place.y <= this.columns.top
      ? place
      : { page: place.page + 1, y: this.columns.top };
  }

  add(place: Place, element: Element): void {
    this.pageAt(place.page).elements.push(element);
  }
  furnish(place: Place, ...ops: Op[]): void {
    this.pageAt(place.page).furniture.push(...ops);
  }

  /** A text broken to a width. */
  broken(text: string, style: Style, ink: string, width: number, indent = 0): TextLine[] {
    return brokenText(text, style, width - indent, this.widths).map((line) => ({ text: line, style, ink, indent }));
  }

  /**
   * Sets lines one under the other from `place` on, going on at the top of the next page; the first two keep together.
   * @returns the place under them, and where the first one went (its `y` is the top of the line).
   */
  setLines(
    place: Place,
    x: number,
    lines: readonly TextLine[],
    tag: Element['tag'] = 'P',
  ): { after: Place; first: Place } {
    let at = this.withRoom(
      place,
      lines.slice(0, 2).reduce((sum, { style }) => sum + style.leading, 0),
    );
    const first = at;
    let ops: Op[] = [];
    const flush = () => {
      const texts = ops.flatMap((op) => (op.kind === 'text' ? [op] : []));
      const unset = texts.some(({ text, style }) => !canSet(text, style));
      if (ops.length > 0)
        this.add(at, { tag, ops, ...(unset ? { actual: texts.map(({ text }) => text).join('') } : {}) });
      ops = [];
    };
    for (const { text, style, ink, indent = 0 } of lines) {
      if (at.y + style.leading > this.columns.bottom + 0.01 && at.y > this.columns.top) {
        flush();
        at = { page: at.page + 1, y: this.columns.top };
      }
      ops.push({ kind: 'text', x: x + indent, y: at.y + baselineIn(style), text, style, ink });
      at = { page: at.page, y: at.y + style.leading };
    }
    flush();
    return { after: at, first };
  }
}

/** The baseline of a line of this style, from its top. */
export const baselineIn = ({ size, leading }: Style): number => (leading - size) / 2 + size * 0.8;

export const later = (one: Place, other: Place): Place =>
  one.page > other.page || (one.page === other.page && one.y >= other.y) ? one : other;
export const below = ({ page, y }: Place, by: number): Place => ({ page, y: y + by });
