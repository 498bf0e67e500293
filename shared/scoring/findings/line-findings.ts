import type { Finding } from '@/shared/schemas/measure';
import { balanceFindings } from './balance';
import { capitalsAndSpacesFindings } from './capitals-and-spaces';
import { contactFindings } from './contact';
import { darkGroundFindings } from './dark-ground';
import { evennessFindings } from './evenness';
import type { Measured } from './make-finding';
import { mistakableFindings } from './mistakable';
import { setDifferentlyFindings } from './set-differently';

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
