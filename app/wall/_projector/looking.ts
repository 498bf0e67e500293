'use client';
import { noLooks, type LookName, type Looks } from '@/shared/line/looks';

/** What is looked at and how; it concerns this screen only and is not kept. */
export type Looking = {
  readonly looks: Looks;
  /** First of the three letters that are not covered. */
  readonly window: number;
  readonly median: boolean;
  /** Which reference is laid over, or null. */
  readonly reference: number | null;
  /** Lines side by side; null finds as many as can be read from the back. */
  readonly columns: number | null;
  readonly chosen: string | null;
  readonly one: string | null;
  readonly two: string | null;
  readonly turning: boolean;
  readonly paused: boolean;
  /** Seconds each of the two is shown. */
  readonly seconds: number;
  /** New lines wait until they are placed. */
  readonly holding: boolean;
  readonly link: boolean;
  readonly strip: boolean;
};

export const atFirst: Looking = {
  looks: noLooks,
  window: 0,
  median: false,
  reference: null,
  columns: null,
  chosen: null,
  one: null,
  two: null,
  turning: false,
  paused: false,
  seconds: 2,
  holding: false,
  link: false,
  strip: false,
};

export const toggled = (looking: Looking, look: LookName): Looking => ({
  ...looking,
  looks: { ...looking.looks, [look]: !looking.looks[look] },
});

/** Whole seconds and a half at the least: nothing on the wall changes more often than twice a second. */
export const turnSeconds = [0.5, 1, 2, 4] as const;

export const MEDIAN = 'the median';
export const REFERENCE = 'the reference';
