import { writeFileSync } from 'node:fs';
import type { NetFile } from '@/shared/usual-range/net-file';
import type { Fit } from '@/shared/usual-range/shares';
import type { NetNumbers } from './net-in-training';

/** A net in whole numbers of 16 bits, each row of a matrix in shares of its own largest number. */
export function netFile({ hidden, layers }: NetNumbers): NetFile {
  return {
    hidden,
    layers: layers.map(({ weights, constants }) => {
      const across = constants.length;
      const rows = Array.from({ length: weights.length / across }, (_, row) => {
        let most = 0;
        for (let i = 0; i < across; i += 1) most = Math.max(most, Math.abs(weights[row * across + i]!));
        return Number(most.toPrecision(6)) || 1;
      });
      const wholes = Int16Array.from(weights, (weight, i) =>
        Math.max(-32_767, Math.min(32_767, Math.round((weight / rows[Math.floor(i / across)]!) * 32_767))),
      );
      return {
        rows,
        weights: Buffer.from(wholes.buffer).toString('base64'),
        constants: Array.from(constants, (value) => Number(value.toPrecision(6))),
      };
    }),
  };
}

export function writeWeights(path: URL, nets: NetFile[], stretch: Fit['stretch'], says: string): void {
  writeFileSync(
    path,
    `import type { NetFile } from './net-file';
import type { Fit } from './shares';

// prettier-ignore
/** ${says} Written by \`npm run -s fit\` and not edited by hand; families and licences are in fitted-on.md. */
export const FIT: { nets: NetFile[]; stretch: Fit['stretch'] } = ${JSON.stringify({ nets, stretch })};
`,
  );
}
