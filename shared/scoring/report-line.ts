import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure, LineReport } from '@/shared/schemas/measure';
import { capitalsAndSpacesFindings } from './findings/capitals-and-spaces';
import { contactFindings, darkGroundFindings, mistakableFindings } from './findings/contact';
import { balanceFindings, evennessFindings, setDifferentlyFindings } from './findings/evenness';
import { joinedFindings, setTightFindings, unusualFindings, usualFindings } from './findings/usual';
import { measureLine } from './measure-line';

/**
 * Measures a line as set and lists what is found in it by itself, as facts: what is stored of a proof's line.
 * Crowding is judged at `smallestSize`, where one is named and it is under the line's own.
 * @throws MeasureError as measureLine does.
 */
export function reportLine(...line: Parameters<typeof measureLine>): LineReport {
  const measured = measureLine(...line);
  return { ...measured, findings: lineFindings(measured) };
}

/** All findings of a line by itself, the most urgent first. The order is fixed. */
function lineFindings(measured: LineMeasure): Finding[] {
  return [
    ...contactFindings(measured),
    ...mistakableFindings(measured),
    ...setDifferentlyFindings(measured),
    ...usualFindings(measured),
    ...joinedFindings(measured),
    ...setTightFindings(measured),
    ...evennessFindings(measured),
    ...unusualFindings(measured),
    ...balanceFindings(measured),
    ...capitalsAndSpacesFindings(measured),
    ...darkGroundFindings(measured),
  ];
}
