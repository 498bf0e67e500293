'use client';
import dynamic from 'next/dynamic';
import { inBrowser } from './in-browser';
import type { EyePracticeProps } from './props';

const Sitting = dynamic(() => import('./practice/sitting').then((module) => inBrowser(module.Sitting, OnTheirWay)), {
  loading: OnTheirWay,
});

/** Trains the eye on moved gaps: the moves get smaller as long as the person sees them. */
export function EyePractice(props: EyePracticeProps) {
  return <Sitting {...props} />;
}

function OnTheirWay() {
  return <p className="quiet">Loading the lines …</p>;
}
