import { pearson } from '@/shared/stats/correlation';
import { clearance } from '@/shared/measure/clearance';
import type { AgreementFace } from './load';

/**
 * What reading practice does to an even setting: the first `letPass` units are let pass, then `share` of the rest is
 * taken; pairs are opened only where `opens`; a tightening stops where clearance would fall under 0.45 of the stem gap
 * (`stops`).
 */
export type Calibration = { letPass: number; share: number; opens: boolean; stops: boolean };

export function calibrated(raw: number, stop: number, { letPass, share, opens, stops }: Calibration): number {
  const kern = raw < -letPass ? share * (raw + letPass) : opens && raw > letPass ? share * (raw - letPass) : 0;
  return stops && kern < 0 ? Math.max(kern, stop) : kern;
}

/**
 * The tightest kerning the clearance rule allows each pair, by the clearance as set; 0 where it is too near already.
 */
export function stopsOf({ face, shapes, pairs }: AgreementFace): number[] {
  return pairs.map(({ left, right }) => {
    const a = shapes[left]!,
      b = shapes[right]!;
    return Math.min(0, 0.45 * face.stem!.stemGap - clearance(a, b, a.advance).distance);
  });
}

/**
 * Every rival gets the calibration that serves it best on the faces fitted on: the mean over them of the error, as a
 * share of always saying 0, minus the correlation, is least.
 */
export function fitCalibration(
  faces: AgreementFace[],
  raws: number[][],
  stops: number[][],
  fixed: Partial<Calibration> = {},
): Calibration {
  let best: Calibration = { letPass: 0, share: 1, opens: false, stops: false },
    least = Infinity;
  for (const opens of [false, true])
    for (const stop of [false, true])
      for (let letPass = 0; letPass <= 80; letPass += 2)
        for (let share = 0.1; share < 1.55; share += 0.1) {
          const calibration = { letPass, share: Math.round(share * 10) / 10, opens, stops: stop, ...fixed };
          const miss = missOf(faces, raws, stops, calibration);
          if (miss < least) {
            least = miss;
            best = calibration;
          }
        }
  return best;
}

function missOf(faces: AgreementFace[], raws: number[][], stops: number[][], calibration: Calibration): number {
  let sum = 0;
  faces.forEach(({ kerns, alwaysZero }, f) => {
    const predicted = kerns.map((_, i) => calibrated(raws[f]![i]!, stops[f]![i]!, calibration));
    let miss = 0;
    kerns.forEach((kern, i) => {
      miss += Math.abs(predicted[i]! - kern);
    });
    sum += miss / kerns.length / alwaysZero - (pearson(predicted, kerns) ?? 0);
  });
  return sum / faces.length;
}
