import type { Finding } from '@/shared/schemas/measure';
import { balanceFindings, evennessFindings, setDifferentlyFindings } from './evenness';
import { capitalsAndSpacesFindings } from './capitals-and-spaces';
import { contactFindings, darkGroundFindings, mistakableFindings } from './contact';
import type { Measured } from './measured';

/** Everything that can be said of a line by itself, what needs doing first. The order is fixed. */
export function lineFindings(measured: Measured): Finding[] {
  return [
    ...contactFindings(measured),
    ...mistakableFindings(measured),
    ...setDifferentlyFindings(measured),
    ...evennessFindings(measured),
    ...balanceFindings(measured),
    ...capitalsAndSpacesFindings(measured),
    ...darkGroundFindings(measured),
  ];
}
