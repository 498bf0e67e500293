/** What the demo's students say about their proofs; made up. */
export const reasonings: readonly string[] = [
  'I set the straight pairs first and brought the round ones to them.',
  'The V and the A looked as if they had fallen apart, so I closed them most.',
  'I tightened the large lines as a whole before touching single gaps.',
  'I left the small line nearly as it came, because closing it made it grey.',
  'On the dark ground the letters seemed to swell, so I gave them more room.',
  'I turned every line on its head and closed whatever caught my eye.',
  'The heavy word has so little white inside that I did not dare to close it further.',
];
