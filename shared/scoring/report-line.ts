import { measureLine } from './measure-line';
import type { LineReport } from '@/shared/schemas/measure';
import { lineFindings } from './findings/line-findings';

/**
 * Measures a line as set and lists what is found in it by itself, as facts: what is stored of a proof's line.
 * Crowding is judged at `smallestSize`, where one is named and it is under the line's own.
 * @throws MeasureError as measureLine does.
 */
export function reportLine(...line: Parameters<typeof measureLine>): LineReport {
  const measured = measureLine(...line);
  return { ...measured, findings: lineFindings(measured) };
}
