import qrcode from 'qrcode-generator';

/** A QR code (ISO/IEC 18004) of an address: how many modules a side, its white margin of four included, and the dark ones as one path. */
export function qrPath(address: string): { modules: number; path: string } {
  // Level M: a code on a projector is read at an angle and past somebody's head.
  const code = qrcode(0, 'M');
  code.addData(address, 'Byte');
  code.make();
  const count = code.getModuleCount();
  const dark: string[] = [];
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1) {
      if (code.isDark(row, column)) dark.push(`M${column + quiet} ${row + quiet}h1v1h-1z`);
    }
  }
  return { modules: count + 2 * quiet, path: dark.join('') };
}

const quiet = 4;
