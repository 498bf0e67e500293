import type { Finding } from '@/shared/schemas/finding';
import type { LineMeasure } from '@/shared/schemas/measure';
import { capitalsAndSpacesFindings } from './capitals-and-spaces';
import { contactFindings, darkGroundFindings, mistakableFindings } from './contact';
import { joinedFindings, setTightFindings, standsOutFindings, usualFindings } from './usual';
import { balanceFindings, evennessFindings, setDifferentlyFindings } from './evenness';

/** Everything that can be said of a line by itself, what needs doing first. The order is fixed. */
export function lineFindings(measured: LineMeasure): Finding[] {
  return [
    ...contactFindings(measured),
    ...mistakableFindings(measured),
    ...setDifferentlyFindings(measured),
    ...usualFindings(measured),
    ...joinedFindings(measured),
    ...setTightFindings(measured),
    ...evennessFindings(measured),
    ...standsOutFindings(measured),
    ...balanceFindings(measured),
    ...capitalsAndSpacesFindings(measured),
    ...darkGroundFindings(measured),
  ];
}
