/** What can be wrong with a face, a lettering or a text. The code is for programs, the message for people. */
export type FaceErrorCode =
  | 'not-a-face'
  | 'damaged'
  | 'readers-disagree'
  | 'too-large'
  | 'unsupported'
  | 'bad-axis'
  | 'no-outline'
  | 'bad-text'
  | 'text-too-long'
  | 'cut-off'
  | 'busy'
  | 'unknown-face'
  | 'bad-pack';

/** Quotes what was wrong and says what to do. Nothing in lib/face throws anything else on bad input. */
export class FaceError extends Error {
  readonly code: FaceErrorCode;

  constructor(code: FaceErrorCode, message: string) {
    super(message);
    this.name = 'FaceError';
    this.code = code;
  }
}

/** A part of a person's text for use in a message: short, and control characters made visible. */
export function quoted(text: string, longest = 40): string {
  const visible = [...text.slice(0, longest * 2)].map((character) =>
    /[\p{C}\p{Z}]/u.test(character) && character !== ' ' ? codePoint(character) : character,
  );
  const short = visible.slice(0, longest).join('');
  return `“${short}${visible.length > longest || text.length > longest * 2 ? '…' : ''}”`;
}

/** `U+0041` for `A`. */
export function codePoint(character: string): string {
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
}
