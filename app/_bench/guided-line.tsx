'use client';
import dynamic from 'next/dynamic';
import { inBrowser } from './in-browser';
import type { GuidedLineProps } from './props';

const GuidedWorkbench = dynamic(
  () => import('./guide/guided-workbench').then((module) => inBrowser(module.GuidedWorkbench, OnItsWay)),
  { loading: OnItsWay },
);

/** A short guided line for a first visit. See props.ts for what a page gives it. */
export function GuidedLine(props: GuidedLineProps) {
  return <GuidedWorkbench key={props.personKey} {...props} />;
}

function OnItsWay() {
  return (
    <>
      <h1>A first line</h1>
      <p className="quiet">Loading the first line …</p>
    </>
  );
}
