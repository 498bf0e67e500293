import { seededRandom } from './random';

/** 95 % percentile interval of a figure over faces: faces drawn with replacement, 4,000 times, seeded. */
export function intervalOver<T>(faces: T[], figure: (drawn: T[]) => number): [number, number] {
  const random = seededRandom(7);
  const figures = Array.from({ length: 4000 }, () =>
    figure(faces.map(() => faces[Math.floor(random() * faces.length)]!)),
  ).sort((a, b) => a - b);
  return [figures[99]!, figures[3899]!];
}
