import type { MetadataRoute } from 'next';

/** What a device shows when Kerncrit is put on its home screen. Colours are those of the light ground and the sheet. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Kerncrit',
    short_name: 'Kerncrit',
    description: 'A classroom tool for spacing display type by eye.',
    start_url: '/courses',
    display: 'standalone',
    background_color: '#f0f1f2',
    theme_color: '#f0f1f2',
    icons: [
      { src: '/mark-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/mark-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  };
}
