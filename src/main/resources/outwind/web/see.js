import { ask, el, field, say, svg, verdictClass } from './ask.js';
import { boardOf, fine, place, positionsOf, setupOf, shown, suspectsOf } from './contract.js';
import { relief } from './relief.js';

// From fresh shavings to old walnut, as on the printed charts.
const RAMP = [[253, 246, 220], [243, 211, 144], [214, 158, 88], [161, 100, 64], [98, 58, 52]];

function colour(share) {
  const place = Math.max(0, Math.min(1, share)) * (RAMP.length - 1);
  const i = Math.min(RAMP.length - 2, Math.floor(place));
  return 'rgb(' + RAMP[i].map((from, k) => Math.round(from + (RAMP[i + 1][k] - from) * (place - i))).join(',') + ')';
}

const planeAt = (plane, x, y) => plane.atOrigin + plane.slopeX * x + plane.slopeY * y;

export async function see(put, board, gone) {
  let seen;
  let position = 'chosen';
  let without = '';
  let waiting;
  let asked = 0;

  const words = el('div', { role: 'status', class: 'seen' });
  const plan = el('div', { class: 'sheet' });
  const scale = el('p', { id: 'scale' });
  const edges = el('div', { class: 'sheet' });
  const section = el('div', { class: 'sheet' });
  const sectionWords = el('p', { id: 'section-words' });
  const slider = el('input', { type: 'range', id: 'along', min: 0, max: 1000, value: 500, oninput: drawSection });
  const shims = el('div', {});
  const suspects = el('div', { id: 'suspects' });
  const target = field('target', 'Thickness wanted', { oninput: soon });
  const skim = field('skim', 'Skim off each face', { oninput: soon });
  const which = el('select', { id: 'position', onchange: () => { position = which.value; draw(); } });

  const gain = el('p', { id: 'gain' });
  const cuts = el('div', {});
  const cutter = el('select', { id: 'cutter', onchange: () => load() });
  const surface = relief();
  let sliding = false;

  // A tap on a suspect shows the answer without it; a finger along the board moves the section.
  function pointed(event) {
    const drawing = plan.querySelector('svg');
    if (!seen || !drawing) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(drawing.getScreenCTM().inverse());
    const { length, width } = boardOf(seen);
    const finger = 24 / drawing.getScreenCTM().a;
    const near = suspectsOf(seen).find(one => event.type === 'pointerdown'
      && Math.hypot(one.x / length * 1000 - at.x, (width - one.y) / length * 1000 - at.y) < finger);
    if (near) {
      without = String(near.line);
      load();
      return;
    }
    slider.value = at.x;
    drawSection();
  }
  plan.addEventListener('pointerdown', event => { sliding = true; pointed(event); });
  plan.addEventListener('pointermove', event => { if (sliding) pointed(event); });
  for (const end of ['pointerup', 'pointerleave', 'pointercancel']) plan.addEventListener(end, () => { sliding = false; });

  function soon() {
    clearTimeout(waiting);
    waiting = setTimeout(load, 120);
  }

  async function load() {
    const mine = ++asked;
    const query = new URLSearchParams({ board, target: target.querySelector('input').value,
      skim: skim.querySelector('input').value, without, cutter: cutter.value });
    try {
      const fresh = await ask('see?' + query);
      if (mine === asked && !gone()) {
        seen = fresh;
        say('');
        const held = suspects.contains(document.activeElement);
        draw();
        if (held) (document.getElementById('put-back') || suspects.querySelector('button'))?.focus();
      }
    } catch (e) {
      if (mine === asked) say(e.message, true);
      if (!seen) throw e;
    }
  }

  function draw() {
    const { grid, units } = seen;
    const { length, width } = boardOf(seen);
    const choices = positionsOf(seen);
    which.replaceChildren(...choices.map(([value, text]) => el('option', { value, selected: value === position }, text)));
    words.replaceChildren(...seen.words.map((text, i) => el('p', i ? {} : { class: 'verdict ' + verdictClass(text) }, text)));
    const planes = seen.cutTo[position];
    const depths = grid.top.map((top, i) => top - planeAt(planes.faceA, grid.x[i], grid.y[i]));
    const most = Math.max(...depths, 0.001);
    const wide = 1000 / length;
    const tall = width * wide;
    const xs = [...new Set(grid.x)].sort((a, b) => a - b);
    const ys = [...new Set(grid.y)].sort((a, b) => a - b);
    const index = new Map(grid.x.map((x, i) => [x + ' ' + grid.y[i], i]));
    const cells = [];
    for (let i = 0; i + 1 < xs.length; i++) {
      for (let k = 0; k + 1 < ys.length; k++) {
        const corners = [[i, k], [i + 1, k], [i, k + 1], [i + 1, k + 1]].map(([a, b]) => depths[index.get(xs[a] + ' ' + ys[b])]);
        const mean = corners.reduce((sum, one) => sum + one, 0) / 4;
        cells.push(svg('rect', { x: xs[i] * wide, y: tall - ys[k + 1] * wide, width: (xs[i + 1] - xs[i]) * wide + 0.6,
          height: (ys[k + 1] - ys[k]) * wide + 0.6, fill: colour(mean / most) }));
      }
    }
    const held = setupOf(seen, position).shims;
    plan.replaceChildren(svg('svg', { viewBox: '-30 -30 1060 ' + (tall + 60), role: 'img',
      'aria-label': 'Plan of the board, darker where more comes off face A, with ' + held.length + ' shims' }, svg('g', { class: 'cells' }, cells),
    svg('rect', { x: 0, y: 0, width: 1000, height: tall, class: 'ink', 'stroke-width': 3 }),
    suspectsOf(seen).map(one => svg('circle', { class: 'suspect', cx: one.x * wide, cy: tall - one.y * wide, r: 26 })),
    held.map(one => svg('path', { class: 'fill', d: 'M' + one.x * wide + ' ' + (tall - one.y * wide)
      + 'm-16 ' + (one.y < width / 2 ? '26h32l-16 -24z' : '-26h32l-16 24z') }))));
    scale.textContent = 'What comes off face A: light least, ' + shown(Math.min(...depths), units) + '; dark most, '
      + shown(most, units) + '. Near edge at the bottom; the end you measured from at the left.';
    shims.replaceChildren(el('p', {}, held.length ? '' : 'It needs no shims.'), el('ol', {}, held.map(one =>
      el('li', {}, shown(one.height, units) + ' at ' + place(one.x, units) + ' along, ' + place(one.y, units) + ' across'))));
    const doubts = suspectsOf(seen);
    suspects.replaceChildren(...doubts.map(one => el('p', {}, 'Looks wrong: ' + fine(one.z, units) + ' at x '
      + place(one.x, units) + ', y ' + place(one.y, units) + '. The others point to ' + fine(one.expected, units) + '. ',
    el('button', { type: 'button', id: 'without-' + one.line, onclick: () => { without = String(one.line); load(); } }, 'See it without'))),
    without ? el('button', { type: 'button', id: 'put-back', onclick: () => { without = ''; load(); } }, 'Put it back') : '');
    gain.textContent = seen.gain;
    cuts.replaceChildren(...seen.cuts.map(text => el('p', {}, text)));
    cutter.replaceChildren(el('option', { value: '', selected: cutter.value === '' }, seen.cutters.length ? 'The quickest way' : 'None is known'),
      ...seen.cutters.map(name => el('option', { value: name, selected: name === cutter.value }, name)));
    const depthAt = (i, k) => depths[index.get(xs[i] + ' ' + ys[k])];
    surface.draw({ xs, ys, height: (i, k) => grid.top[index.get(xs[i] + ' ' + ys[k])],
      colours: (i, k) => colour((depthAt(i, k) + depthAt(i + 1, k) + depthAt(i, k + 1) + depthAt(i + 1, k + 1)) / 4 / most) });
    drawEdges(xs, ys, index);
    drawSection();
  }

  function profile(points, upper, lower, label) {
    const heights = [...points.flatMap(one => [one.top, one.under]), ...upper, ...lower];
    const low = Math.min(...heights);
    const range = Math.max(...heights) - low || 1;
    const from = points[0].at;
    const px = at => (at - from) / (points[points.length - 1].at - from) * 1000;
    const py = z => 190 - (z - low) / range * 180;
    const path = values => points.map((one, i) => (i ? 'L' : 'M') + px(one.at).toFixed(1) + ' ' + py(values[i]).toFixed(1)).join('');
    return svg('svg', { viewBox: '-10 0 1020 200', role: 'img', 'aria-label': label },
      svg('path', { class: 'wood', 'stroke-width': 3, d: path(points.map(one => one.top))
        + [...points].reverse().map(one => 'L' + px(one.at).toFixed(1) + ' ' + py(one.under).toFixed(1)).join('') + 'Z' }),
      svg('path', { class: 'markline', 'stroke-width': 3, 'stroke-dasharray': '14 8', d: path(upper) }),
      svg('path', { class: 'markline', 'stroke-width': 3, 'stroke-dasharray': '14 8', d: path(lower) }));
  }

  function drawEdges(xs, ys, index) {
    const planes = seen.cutTo[position];
    edges.replaceChildren(...[[ys[0], 'Near edge'], [ys[ys.length - 1], 'Far edge']].flatMap(([y, name]) => {
      const points = xs.map(x => ({ at: x, top: seen.grid.top[index.get(x + ' ' + y)],
        under: seen.grid.underside[index.get(x + ' ' + y)] }));
      return [el('p', {}, name), profile(points, xs.map(x => planeAt(planes.faceA, x, y)),
        xs.map(x => planeAt(planes.faceB, x, y)), name + ' in profile; broken lines are the finished faces')];
    }));
  }

  function drawSection() {
    const { grid, units } = seen;
    const xs = [...new Set(grid.x)].sort((a, b) => a - b);
    const ys = [...new Set(grid.y)].sort((a, b) => a - b);
    const index = new Map(grid.x.map((x, i) => [x + ' ' + grid.y[i], i]));
    const x = slider.value / 1000 * xs[xs.length - 1];
    const i = Math.min(xs.length - 2, xs.findLastIndex(one => one <= x));
    const t = (x - xs[i]) / (xs[i + 1] - xs[i]);
    const between = (values, y) => values[index.get(xs[i] + ' ' + y)] * (1 - t) + values[index.get(xs[i + 1] + ' ' + y)] * t;
    const planes = seen.cutTo[position];
    const points = ys.map(y => ({ at: y, top: between(grid.top, y), under: between(grid.underside, y) }));
    const off = points.map(one => one.top - planeAt(planes.faceA, x, one.at));
    section.replaceChildren(profile(points, ys.map(y => planeAt(planes.faceA, x, y)), ys.map(y => planeAt(planes.faceB, x, y)),
      'Section across the board'));
    plan.querySelector('.along')?.remove();
    plan.querySelector('svg')?.append(svg('path', { class: 'markline along', 'stroke-width': 4, d: 'M' + slider.value + ' 0V' + boardOf(seen).width / boardOf(seen).length * 1000 }));
    const [least, most] = [Math.min(...off), Math.max(...off)].map(one => shown(one, units));
    sectionWords.textContent = 'At ' + place(x, units) + ' along, ' + (least === most ? '' : least + ' to ') + most
      + ' comes off face A.';
  }

  await load();
  put(el('h1', {}, boardOf(seen).name), words, suspects,
    el('div', { class: 'two' }, el('div', {}, plan, scale,
      el('h2', {}, 'Section'), el('label', { for: 'along' }, 'Slide along the board, here or on the plan'), slider, sectionWords, section,
      el('h2', {}, 'Relief'), surface.parts,
      el('h2', {}, 'Edges in profile'), el('p', {}, 'Heights are drawn larger than lengths. Broken lines are the finished faces.'), edges),
    el('div', {}, el('h2', {}, 'What if'), target, skim,
      el('div', {}, el('label', { for: 'position' }, 'How it is held'), which),
      el('div', {}, el('label', { for: 'cutter' }, 'Cutter'), cutter), gain,
      el('h2', {}, 'Shims'), shims, el('h2', {}, 'Cuts'), cuts,
      el('h2', {}, 'Take it along'),
      el('p', {}, el('a', { class: 'button', href: '/api/report?board=' + encodeURIComponent(board), download: true }, 'Report'), ' ',
        el('a', { class: 'button', href: '/api/sheet?board=' + encodeURIComponent(board), download: true }, 'Sheet'), ' ',
        el('a', { class: 'button', href: '/api/file?board=' + encodeURIComponent(board), download: true }, 'Board file')))));
}
