/**
 * The people of the demo, all invented. Their passwords are printed at every start of a demo database and are worth
 * nothing anywhere else.
 */
export const instructor = {
  name: 'Odile Marrant',
  email: 'odile@quayrow.example',
  password: 'harbour lights at dusk',
  role: 'instructor',
} as const;
export const assistant = {
  name: 'Tobin Ashgrove',
  email: 'tobin@quayrow.example',
  password: 'seven ropes of hemp',
  role: 'assistant',
} as const;
export const secondAssistant = {
  name: 'Maren Vilhede',
  email: 'maren@quayrow.example',
  password: 'salt on the railings',
  role: 'assistant',
} as const;

const studentPassword = 'tide tables for may';

export const students = [
  'Ines Calloway-Ruy',
  'Bram Oosterveld',
  'Sunniva Tarr',
  'Mateo Lindqvist',
  'Priya Wexcombe',
  'Jonas Adeyo',
  'Lucie Farrimond',
  'Noor Haverbeke',
  'Casimir Oyelaran',
  'Wren Abarca',
  'Tove Kilmartin',
  'Ayo Pellegrin',
  'Mirela Stroud',
  'Ravi Quennell',
  'Elke Dunmore',
  'Hugo Tamsin',
].map((name) => ({
  name,
  email: `${firstName(name)}@quayrow.example`,
  password: studentPassword,
  role: 'student' as const,
}));

/**
 * For the console: everyone who teaches, and two students of each kind: with work in both rounds, and with none yet.
 */
export const demoSignIns = [instructor, assistant, secondAssistant, ...students.slice(0, 2), ...students.slice(-2)];

function firstName(name: string): string {
  return (name.split(' ')[0] ?? name).toLowerCase();
}
