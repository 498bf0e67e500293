/** The kinds of design that a course wants examples of. `display` is drawn for large sizes. */
export type Design = 'sans' | 'serif' | 'slab' | 'high-contrast display' | 'heavy display' | 'condensed sans';

export type InstalledFamily = {
  /** Package name below node_modules. */
  package: string;
  family: string;
  design: Design;
  /** For variable faces: the file's set of axes, as the package names it. */
  axisSet?: 'opsz' | 'standard' | 'full';
};

/** The open-licence families that come with the product. Weights are read from the package. */
export const INSTALLED_FAMILIES: readonly InstalledFamily[] = [
  { package: '@fontsource/abril-fatface', family: 'Abril Fatface', design: 'heavy display' },
  { package: '@fontsource/alegreya', family: 'Alegreya', design: 'serif' },
  { package: '@fontsource/alfa-slab-one', family: 'Alfa Slab One', design: 'heavy display' },
  { package: '@fontsource/archivo', family: 'Archivo', design: 'sans' },
  { package: '@fontsource/arvo', family: 'Arvo', design: 'slab' },
  { package: '@fontsource/bitter', family: 'Bitter', design: 'slab' },
  { package: '@fontsource/crimson-pro', family: 'Crimson Pro', design: 'serif' },
  { package: '@fontsource/eb-garamond', family: 'EB Garamond', design: 'serif' },
  { package: '@fontsource/fira-sans', family: 'Fira Sans', design: 'sans' },
  { package: '@fontsource/inter', family: 'Inter', design: 'sans' },
  { package: '@fontsource/lato', family: 'Lato', design: 'sans' },
  { package: '@fontsource/libre-baskerville', family: 'Libre Baskerville', design: 'serif' },
  { package: '@fontsource/libre-franklin', family: 'Libre Franklin', design: 'sans' },
  { package: '@fontsource/montserrat', family: 'Montserrat', design: 'sans' },
  { package: '@fontsource/oswald', family: 'Oswald', design: 'condensed sans' },
  { package: '@fontsource/overpass', family: 'Overpass', design: 'sans' },
  { package: '@fontsource/playfair-display', family: 'Playfair Display', design: 'high-contrast display' },
  { package: '@fontsource/roboto-slab', family: 'Roboto Slab', design: 'slab' },
  { package: '@fontsource/source-sans-3', family: 'Source Sans 3', design: 'sans' },
  { package: '@fontsource/source-serif-4', family: 'Source Serif 4', design: 'serif' },
  { package: '@fontsource/vollkorn', family: 'Vollkorn', design: 'serif' },
  { package: '@fontsource/work-sans', family: 'Work Sans', design: 'sans' },
  { package: '@fontsource/zilla-slab', family: 'Zilla Slab', design: 'slab' },
  { package: '@fontsource-variable/fraunces', family: 'Fraunces', design: 'serif', axisSet: 'opsz' },
  { package: '@fontsource-variable/literata', family: 'Literata', design: 'serif', axisSet: 'opsz' },
  { package: '@fontsource-variable/newsreader', family: 'Newsreader', design: 'serif', axisSet: 'opsz' },
  { package: '@fontsource-variable/roboto-flex', family: 'Roboto Flex', design: 'sans', axisSet: 'opsz' },
  { package: '@fontsource-variable/source-serif-4', family: 'Source Serif 4', design: 'serif', axisSet: 'opsz' },
];
