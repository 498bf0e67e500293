// Fits one net on some families for run.ts.
import { corpus } from './corpus';
import { fitNet, type FitOptions } from './fit-net';

process.on('message', (message: { families: string[]; options: FitOptions }) => {
  void work(message);
});

async function work({ families, options }: { families: string[]; options: FitOptions }): Promise<void> {
  const faces = (await corpus()).filter(({ family }) => families.includes(family));
  const net = await fitNet(faces, options, (text) => process.stderr.write(`seed ${options.seed}: ${text}\n`));
  process.send!(net);
}
