import { Notice } from '@/app/_ui/Notice';

/** Shown wherever an exercise uses lines that could stand on a sign people’s safety depends on. */
export function SignCaution() {
  return (
    <Notice kind="caution" title="Signs that people’s safety depends on">
      Spacing on traffic, exit, safety and accessibility signs is set by codes and standards and not by eye. What is
      done here is an exercise; on a real sign, the local code and a licensed practitioner decide.
    </Notice>
  );
}
