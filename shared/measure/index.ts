/** What screens and commands use of the measuring core. */
export { ENGINE } from './engine';
export { MeasureError, type MeasureErrorCode } from './errors';
export { measureLine } from './measureLine';
export { prepareLine, type PreparedLine, type PreparedPair } from './preparedLine';
export { apparentGapAt, areaAt, clearanceAt, offsetForGap } from './atTotal';
export { letterProfile, pairWhite, pairProfiles, type PairProfiles } from './drawing';
