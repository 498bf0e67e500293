import { addedBy, LEAST_BAND, pixelsOf, type SetSpecimen } from './response';
import { expectedResponse } from './size-response';

/** How one specimen answers to its size and weight. Lengths in 1/1000 em; shares are of the face's own stem gap. */
export type ResponsePoint = {
  pixels: number;
  weight: number;
  family: string;
  /** Not drawn for a range of sizes of its own. */
  readingFace: boolean;
  /** The middle gap of the line's letter pairs as set, and as the face comes; null for a line without letter pairs. */
  gap: number | null;
  asBuilt: number | null;
  stemGap: number | null;
  share: number | null;
  shareAsBuilt: number | null;
  /** What was added to a typical gap, and what faces with optical sizes add at this size; the band is as wide as the answer itself. */
  added: number;
  expected: number;
  lower: number;
  upper: number;
};

/** The figures of one specimen for the plot. Nothing here is a fault. */
export function responsePoint(specimen: SetSpecimen): ResponsePoint {
  const {
    measure: { line },
    family,
    weight,
    drawnFor,
  } = specimen;
  const pixels = pixelsOf(specimen);
  const expected = expectedResponse(pixels, drawnFor);
  const band = Math.max(LEAST_BAND, Math.abs(expected));
  return {
    pixels,
    weight,
    family,
    readingFace: drawnFor === null,
    gap: line.reference,
    asBuilt: line.asBuilt,
    stemGap: line.stemGap,
    share: shareOf(line.reference, line.stemGap),
    shareAsBuilt: shareOf(line.asBuilt, line.stemGap),
    added: addedBy(specimen),
    expected,
    lower: expected - band,
    upper: expected + band,
  };
}

const shareOf = (gap: number | null, stem: number | null): number | null =>
  gap === null || stem === null || stem <= 0 ? null : gap / stem;
