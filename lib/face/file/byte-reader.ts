/**
 * Big-endian reading with bounds: past the end it answers undefined, so that a truncated file is noticed and not read
 * as zeros.
 */
export class ByteReader {
  private readonly view: DataView;

  constructor(readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  get length(): number {
    return this.bytes.byteLength;
  }

  uint8(at: number): number | undefined {
    return at >= 0 && at + 1 <= this.length ? this.view.getUint8(at) : undefined;
  }

  uint16(at: number): number | undefined {
    return at >= 0 && at + 2 <= this.length ? this.view.getUint16(at) : undefined;
  }

  int16(at: number): number | undefined {
    return at >= 0 && at + 2 <= this.length ? this.view.getInt16(at) : undefined;
  }

  uint32(at: number): number | undefined {
    return at >= 0 && at + 4 <= this.length ? this.view.getUint32(at) : undefined;
  }

  /** Four characters, as tables and axes are named. */
  tag(at: number): string | undefined {
    return at >= 0 && at + 4 <= this.length ? String.fromCharCode(...this.bytes.subarray(at, at + 4)) : undefined;
  }
}
