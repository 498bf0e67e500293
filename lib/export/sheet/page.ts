import type { Style } from './faces';

/** What is drawn, in points from the page's upper left corner, y downward. The `y` of text is its baseline. */
export type Op =
  | { kind: 'text'; x: number; y: number; text: string; style: Style; ink: string }
  | { kind: 'outline'; commands: readonly OutlineCommand[]; ink: string }
  | { kind: 'rect'; x: number; y: number; width: number; height: number; ink: string }
  | { kind: 'hairline'; points: readonly (readonly [number, number])[]; ink: string; width: number };

export type OutlineCommand = { letter: 'M' | 'L' | 'Q' | 'C' | 'Z'; numbers: readonly number[] };

/** A part of the page as a screen reader meets it, by the standard structure types of ISO 32000-1, 14.8.4. */
export type Element = {
  tag: 'H1' | 'H2' | 'P' | 'Figure' | 'Table' | 'TR' | 'TH' | 'TD' | 'Sect' | 'Note' | 'TOC' | 'TOCI' | 'Link';
  alt?: string;
  /** The words as they are, where a character could not be set. */
  actual?: string;
  scope?: 'Column' | 'Row';
  bbox?: [number, number, number, number];
  /** Leads to a named place in the document. */
  goTo?: { name: string; says: string; x: number; y: number; width: number; height: number };
  ops?: Op[];
  children?: Element[];
};

/** One page: what is read, in order of reading, and what is only furniture (running head, page number, rules, ties). */
export type SheetPage = { elements: Element[]; furniture: Op[] };
