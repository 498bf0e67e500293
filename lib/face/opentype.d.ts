/** The little of opentype.js that is used here: one reader of a face beside another, never for shaping or kerning. */
declare module 'opentype.js' {
  export type PathCommand =
    | { type: 'M' | 'L'; x: number; y: number }
    | { type: 'Q'; x1: number; y1: number; x: number; y: number }
    | { type: 'C'; x1: number; y1: number; x2: number; y2: number; x: number; y: number }
    | { type: 'Z' };
  /** `path` is in font units with y up; `getPath` draws at a size, with y down. CFF has no `xMin`. */
  export type Glyph = {
    advanceWidth: number;
    leftSideBearing: number;
    xMin: number | undefined;
    index: number;
    path: { commands: PathCommand[] };
    getPath(x: number, y: number, size: number): { commands: PathCommand[] };
  };
  export type Font = { unitsPerEm: number; charToGlyph(letter: string): Glyph };
  const opentype: { parse(bytes: ArrayBuffer, options?: { lowMemory?: boolean }): Font };
  export default opentype;
}
