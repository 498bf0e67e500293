/** What screens and commands use of the measuring core. */
export { ENGINE } from './engine';
export { MeasureError, type MeasureErrorCode } from './errors';
export { measureLine } from './measure-line';
export { prepareLine, type PreparedLine, type PreparedPair } from './prepared-line';
export { apparentGapAt, clearanceAt, offsetForGap } from './at-total';
export { pairWhite, pairProfiles, type PairProfiles } from './drawing';
export { pairReferences } from './pair-references';
export { counters, counterWidth, type Counter } from './counters';
