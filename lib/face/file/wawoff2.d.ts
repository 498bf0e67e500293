declare module 'wawoff2/decompress.js' {
  /** WOFF2 bytes to sfnt bytes; throws when the data is not sound. */
  export default function decompress(bytes: Uint8Array): Promise<Uint8Array>;
}
