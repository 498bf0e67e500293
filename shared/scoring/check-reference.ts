import { MeasureError } from '@/shared/measure/errors';
import type { LineMeasure, ReferenceSpacing } from '@/shared/schemas/measure';

/** @throws MeasureError when a reference does not fit the line it is held against, quoting the value. */
export function checkReference(line: LineMeasure, reference: ReferenceSpacing): void {
  const pairs = line.pairs.length;
  const wrong = (name: string, count: number) =>
    new MeasureError(
      'wrong-length',
      `“${line.text}” has ${pairs} gaps, but the reference by ${reference.author} has ${count} ${name}. Set the reference again for this version of the line.`,
      String(count),
    );
  if (reference.offsets.length !== pairs) throw wrong('offsets', reference.offsets.length);
  if (reference.tolerances.length !== pairs) throw wrong('tolerances', reference.tolerances.length);
  for (const value of [reference.tracking, ...reference.offsets]) {
    if (!Number.isInteger(value))
      throw new MeasureError(
        'bad-offset',
        `The reference by ${reference.author} holds “${value}”. Offsets and tracking are whole thousandths of an em.`,
        String(value),
      );
  }
  for (const value of reference.tolerances) {
    if (!(value >= 0 && value < Infinity))
      throw new MeasureError(
        'bad-tolerance',
        `The reference by ${reference.author} holds the tolerance “${value}”. A tolerance is 0 or more thousandths of an em.`,
        String(value),
      );
  }
}
