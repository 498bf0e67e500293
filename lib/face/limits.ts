/**
 * What a face file may be. The largest Latin face in the catalogue is under 0.5 MB unpacked;
 * the limits leave room for large families and keep a hostile file from taking the machine.
 */
export const LIMITS = {
  /** Bytes of the uploaded file. */
  fileBytes: 8 * 1024 * 1024,
  /** Bytes after unpacking WOFF or WOFF2. */
  unpackedBytes: 24 * 1024 * 1024,
  /** unitsPerEm of the OpenType specification, `head` table: 16 to 16384. */
  unitsPerEm: { least: 16, most: 16_384 },
  tables: 128,
  /** Composite glyphs: how deep they may nest and how many parts one letter may have in all. */
  compositeDepth: 8,
  compositeParts: 256,
  /** Characters of one letter's outline as a path; the pack's own limit. An ornate letter has about 5,000. */
  pathCharacters: 200_000,
  /** Code units of the given text, before white space is collapsed. */
  textUnits: 4_000,
  /** Code units and letters of a line; the pack's own limits. */
  lineUnits: 400,
  letters: 200,
  /** Code units of one letter (a grapheme cluster). */
  clusterUnits: 64,
  /** Pairs asked for at once. */
  pairs: 20_000,
  /** Time for one job of a face process, ms; a cold face takes about 20. */
  jobTime: 5_000,
  /** Memory of one WebAssembly module of a face process (HarfBuzz, the WOFF2 decoder), and of its JavaScript, MB. */
  wasmMegabytes: 192,
  heapMegabytes: 256,
  /** Jobs that may wait for a face process. */
  waiting: 400,
} as const;

export function megabytes(bytes: number): string {
  return (bytes / 1024 / 1024).toFixed(1);
}
