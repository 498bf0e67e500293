/**
 * How much a face's total spacing is expected to change at a size, 1/1000 em: the product's one rule for size.
 * A reading face is taken as spaced for 16 px (12 pt); −10 for each doubling above, +15 for each halving below. A face
 * drawn for a range of sizes is at home in it and responds beyond its ends; one set through its optical-size axis has
 * responded already, and its range says so.
 * Source: spacing of n, H and o along the optical-size axes of Fraunces, Literata, Newsreader, Roboto Flex and
 * Source Serif 4 (mean −9.5 a doubling from 16 to 60, +16.6 a halving from 16 to 9; faces differ much). A hint, never a fault.
 */
export function expectedResponse(pixels: number, drawnFor: { from: number; to: number } | null): number {
  const { from, to } = drawnFor ?? READING;
  if (pixels > to) return -ABOVE * doublings(pixels / to);
  if (pixels < from) return BELOW * doublings(from / pixels);
  return 0;
}

const READING = { from: 16, to: 16 };
const ABOVE = 10;
const BELOW = 15;

/** Whether a change would be too small to be seen at a size: under a third of a pixel. */
export function isUnseen(perMille: number, pixels: number): boolean {
  return (Math.abs(perMille) * pixels) / 1000 < 1 / 3;
}

/** How often 1 must be doubled to reach the ratio; within a doubling the way is straight, so that no logarithm is needed. */
function doublings(ratio: number): number {
  let rest = ratio,
    count = 0;
  while (rest >= 2) {
    rest /= 2;
    count += 1;
  }
  return count + rest - 1;
}
