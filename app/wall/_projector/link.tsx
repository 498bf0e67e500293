'use client';
import style from './projector.module.css';

/** The short link: the address as it is typed, and as a QR code. */
export type LinkTo = { address: string; modules: number; path: string };

/** Addresses that only this computer knows. */
const here = /^https?:\/\/(localhost|127\.|\[::1\])/;

export function Link({ link }: { link: LinkTo }) {
  return (
    <section className={style.link} aria-label="Link for phones">
      <svg
        viewBox={`0 0 ${link.modules} ${link.modules}`}
        role="img"
        aria-label={`QR code of ${link.address}`}
        shapeRendering="crispEdges"
      >
        <rect className={style.qrGround} width={link.modules} height={link.modules} />
        <path className={style.qrInk} d={link.path} />
      </svg>
      <p>
        Point at a gap with your phone:
        <br />
        <strong>{link.address.replace(/^https?:\/\//, '')}</strong>
        <br />
        <small>
          No signing in, and no name is asked for. It ends when the wall is closed.
          {here.test(link.address) &&
            ' This address works on this computer alone; for phones the school gives the server its public one (NEXTAUTH_URL).'}
        </small>
      </p>
    </section>
  );
}
