import type { Metadata, Viewport } from 'next';
import { connection } from 'next/server';
import type { ReactNode } from 'react';
import { fontClasses } from './fonts';
import { PersonBar, SiteFoot } from './person-bar';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Kerncrit', template: '%s · Kerncrit' },
  description: 'A classroom tool for spacing display type by eye.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1, colorScheme: 'light dark' };

/** The frame of every page. It waits for the request, because a prerendered page would have no nonce. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  await connection();
  return (
    <html lang="en-GB" className={fontClasses}>
      <body>
        <a className="skip-link" href="#main">
          Skip to the main part
        </a>
        <PersonBar />
        {children}
        <SiteFoot />
      </body>
    </html>
  );
}
