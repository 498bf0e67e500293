'use client';
import { useSyncExternalStore, type ComponentType } from 'react';

/**
 * `Part` where there is a browser; on the server, and while the page comes to life, `Still` in its place. Loaded by a
 * `dynamic` that renders on the server, too, so that the page itself asks for the part's code and it comes together
 * with the framework's and not after it. Meanwhile the page says so by `data-on-its-way`, and its text face waits
 * (tokens.css).
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
