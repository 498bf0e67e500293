'use client';
import { useSyncExternalStore, type ComponentType } from 'react';

/**
 * `Part` in the browser; `Still` in its place on the server and until the page is hydrated. Load `Part` by a `dynamic`
 * that also renders on the server, so that the page requests its code together with the framework's instead of after
 * it. Meanwhile `data-on-its-way` marks the page, and its text face waits (tokens.css).
 */
export function inBrowser<Props extends object>(
  Part: ComponentType<Props>,
  Still: ComponentType,
): ComponentType<Props> {
  return function InBrowser(props: Props) {
    const here = useSyncExternalStore(
      never,
      () => true,
      () => false,
    );
    return here ? (
      <Part {...props} />
    ) : (
      <>
        <span hidden data-on-its-way="" />
        <Still />
      </>
    );
  };
}

const never = () => () => undefined;
