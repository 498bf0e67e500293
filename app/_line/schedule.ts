/** All drawings of a page share one animation frame; each is drawn at most once in it, in the order it was first asked for. */
const waiting = new Set<() => void>();
let asked = 0;

export function drawSoon(draw: () => void): void {
  waiting.add(draw);
  if (asked === 0) asked = requestAnimationFrame(drawAll);
}

export function forgetDrawing(draw: () => void): void {
  waiting.delete(draw);
}

function drawAll(): void {
  asked = 0;
  const now = [...waiting];
  waiting.clear();
  for (const draw of now) draw();
}
