'use client';
import dynamic from 'next/dynamic';
import type { EyePracticeProps } from './props';

const Sitting = dynamic(() => import('./practice/sitting').then((module) => module.Sitting), {
  ssr: false,
  loading: () => <p className="quiet">The lines are on their way.</p>,
});

/** Trains the eye on faults that get smaller as long as they are seen. */
export function EyePractice(props: EyePracticeProps) {
  return <Sitting {...props} />;
}
