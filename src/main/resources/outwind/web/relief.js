import { el } from './ask.js';

// Face A as a surface that is turned by finger or slider. It never moves by itself.
const TILT = 0.5;
const RISE = 110;

export function relief() {
  let face = null;
  const canvas = el('canvas', { class: 'relief', width: 800, height: 420, role: 'img',
    'aria-label': 'Face A as a relief, heights drawn larger than lengths' });
  const turn = el('input', { type: 'range', id: 'turn', min: -180, max: 180, value: -24, oninput: paint });
  const words = el('p', {});
  let from = null;
  canvas.addEventListener('pointerdown', event => { from = event.clientX; canvas.setPointerCapture(event.pointerId); });
  canvas.addEventListener('pointermove', event => {
    if (from === null) return;
    turn.value = Number(turn.value) + (event.clientX - from) / 2;
    from = event.clientX;
    paint();
  });
  for (const end of ['pointerup', 'pointercancel']) canvas.addEventListener(end, () => { from = null; });

  function paint() {
    if (!face) return;
    const { xs, ys, height, colours } = face;
    const pen = canvas.getContext('2d');
    const length = xs[xs.length - 1];
    const width = ys[ys.length - 1];
    const scale = 720 / Math.hypot(length, width);
    const all = xs.flatMap((_, i) => ys.map((_, k) => height(i, k)));
    const low = Math.min(...all);
    const rise = RISE / Math.max(0.2, Math.max(...all) - low);
    const angle = turn.value * Math.PI / 180;
    const points = xs.map((x, i) => ys.map((y, k) => {
      const u = (x - length / 2) * scale;
      const v = (y - width / 2) * scale;
      const away = u * Math.sin(angle) + v * Math.cos(angle);
      return { x: 400 + u * Math.cos(angle) - v * Math.sin(angle), away,
        y: 260 - away * TILT - (height(i, k) - low) * rise * 0.85 };
    }));
    const cells = [];
    for (let i = 0; i + 1 < xs.length; i++) {
      for (let k = 0; k + 1 < ys.length; k++) {
        const corners = [points[i][k], points[i + 1][k], points[i + 1][k + 1], points[i][k + 1]];
        cells.push({ corners, colour: colours(i, k), away: corners.reduce((sum, one) => sum + one.away, 0) });
      }
    }
    pen.clearRect(0, 0, 800, 420);
    pen.strokeStyle = getComputedStyle(canvas).color;
    pen.lineWidth = 0.6;
    for (const cell of cells.sort((one, other) => other.away - one.away)) {
      pen.beginPath();
      for (const one of cell.corners) pen.lineTo(one.x, one.y);
      pen.closePath();
      pen.fillStyle = cell.colour;
      pen.fill();
      pen.stroke();
    }
    words.textContent = 'Heights are drawn ' + Math.round(rise / scale) + ' times as large as lengths.';
  }

  return { parts: [canvas, el('label', { for: 'turn' }, 'Turn it'), turn, words],
    draw(fresh) { face = fresh; paint(); } };
}
