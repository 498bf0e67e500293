import jsQR from 'jsqr';
import { expect, it } from 'vitest';
import { qrPath } from '@/lib/wall/pointing';

it.each(['https://type.school.example/w/BCDFGHJKMN', 'http://127.0.0.1:3000/w/ZXWVT98764'])(
  '%s is read by another program from the drawn path',
  (address) => {
    const { modules, path } = qrPath(address);
    const scale = 4;
    const side = modules * scale;
    const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
    for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
      for (let at = 0; at < scale * scale; at += 1)
        pixels.fill(
          0,
          offset(Number(x), Number(y), at, side, scale),
          offset(Number(x), Number(y), at, side, scale) + 3,
        );
    }
    const read = (jsQR as unknown as { default?: typeof jsQR }).default ?? jsQR;
    expect(read(pixels, side, side)?.data).toBe(address);
  },
);

const offset = (x: number, y: number, at: number, side: number, scale: number) =>
  4 * ((y * scale + Math.floor(at / scale)) * side + x * scale + (at % scale));
