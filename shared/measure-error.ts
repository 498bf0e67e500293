export type MeasureErrorCode =
  'bad-path' | 'no-outline' | 'bad-offset' | 'wrong-length' | 'bad-tolerance' | 'bad-size' | 'bad-pack' | 'bad-input';

/**
 * Thrown for input that cannot be measured. The message quotes the value and says what to do; `value` holds it as text.
 */
export class MeasureError extends Error {
  constructor(
    readonly code: MeasureErrorCode,
    message: string,
    readonly value: string,
  ) {
    super(message);
    this.name = 'MeasureError';
  }
}
