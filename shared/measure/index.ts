/** What screens and commands use of the measuring core. */
export { ENGINE } from './engine';
export { prepareLine } from './prepared-line';
export { apparentGapAt, clearanceAt, offsetForGap } from './at-total';
export { pairWhite, pairProfiles } from './drawing';
export { pairReferences } from './pair-references';
export { counters, counterWidth } from './counters';
