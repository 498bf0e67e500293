import local from 'next/font/local';

/*
 * Served by ourselves; both families are under the SIL Open Font License 1.1.
 * Source Serif 4 carries a real optical-size axis (8–60), tabular and proportional figures.
 * Source Sans 3 sets tabular figures unless proportional ones are asked for.
 */
const text = local({
  src: [
    {
      path: '../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-opsz-normal.woff2',
      style: 'normal',
      weight: '200 900',
    },
    {
      path: '../node_modules/@fontsource-variable/source-serif-4/files/source-serif-4-latin-opsz-italic.woff2',
      style: 'italic',
      weight: '200 900',
    },
  ],
  // Each is 120 kB: preloaded, they would arrive before the page's own code, and few pages set anything in italic.
  preload: false,
  // Its fallback, “text Fallback”, is named after this constant, and tokens.css uses that name.
  variable: '--font-text',
  display: 'swap',
  adjustFontFallback: 'Times New Roman',
});

const plain = local({
  src: [
    {
      path: '../node_modules/@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff2',
      style: 'normal',
      weight: '400',
    },
    {
      path: '../node_modules/@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff2',
      style: 'normal',
      weight: '600',
    },
  ],
  variable: '--font-plain',
  display: 'swap',
});

/** Class names that make `--font-text` and `--font-plain` available to the style sheets. */
export const fontClasses = `${text.variable} ${plain.variable}`;
