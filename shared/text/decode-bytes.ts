/** The decoded text of a file, and what the person should know about the decoding. */
export type Decoded = { text: string; remark: string | null };

/**
 * Reads the bytes of a text file: UTF-8, with or without a byte order mark, or UTF-16 with one; anything that is not
 * valid UTF-8 is read as Windows-1252, as spreadsheets still write it, and reported, since nothing in the bytes can
 * prove it.
 */
export function decodeText(bytes: Uint8Array): Decoded {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), remark: null };
  if (first === 0xfe && second === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), remark: null };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), remark: null };
  } catch {
    return {
      text: windows1252(bytes),
      remark: 'The file is not UTF-8, so it was read as Windows-1252. Look at names with accents before you import.',
    };
  }
}

/**
 * Where Windows-1252 is not Latin-1: 0x80 to 0x9F (WHATWG Encoding Standard, index windows-1252). Node's own decoder
 * was seen to miss these.
 */
const high =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

const windows1252 = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => (byte >= 0x80 && byte <= 0x9f ? high[byte - 0x80]! : String.fromCharCode(byte))).join('');
