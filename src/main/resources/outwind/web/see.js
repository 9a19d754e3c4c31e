import { ask, el, field, say, svg, verdictClass } from './ask.js';

const positions = { asMeasured: 'as measured', levelled: 'levelled' };

// From fresh shavings to old walnut, as on the printed charts.
const RAMP = [[253, 246, 220], [243, 211, 144], [214, 158, 88], [161, 100, 64], [98, 58, 52]];

function colour(share) {
  const place = Math.max(0, Math.min(1, share)) * (RAMP.length - 1);
  const i = Math.min(RAMP.length - 2, Math.floor(place));
  return 'rgb(' + RAMP[i].map((from, k) => Math.round(from + (RAMP[i + 1][k] - from) * (place - i))).join(',') + ')';
}

const planeAt = (plane, x, y) => plane.atOrigin + plane.slopeX * x + plane.slopeY * y;
const shown = (mm, units) => units === 'in' ? (mm / 25.4).toFixed(3) + ' in' : mm.toFixed(1) + ' mm';

export async function see(put, board, gone) {
  let seen;
  let position = 'chosen';
  let without = '';
  let waiting;
  let asked = 0;

  const words = el('div', { role: 'status' });
  const plan = el('div', { class: 'sheet' });
  const scale = el('p', { id: 'scale' });
  const edges = el('div', { class: 'sheet' });
  const section = el('div', { class: 'sheet' });
  const sectionWords = el('p', { id: 'section-words' });
  const slider = el('input', { type: 'range', id: 'along', min: 0, max: 1000, value: 500, oninput: drawSection });
  const shims = el('div', {});
  const suspects = el('div', {});
  const target = field('target', 'Thickness wanted', { oninput: soon });
  const skim = field('skim', 'Skim off each face', { oninput: soon });
  const which = el('select', { id: 'position', onchange: () => { position = which.value; draw(); } });

  function soon() {
    clearTimeout(waiting);
    waiting = setTimeout(load, 120);
  }

  async function load() {
    const mine = ++asked;
    const query = new URLSearchParams({ board, target: target.querySelector('input').value,
      skim: skim.querySelector('input').value, without });
    try {
      const fresh = await ask('see?' + query);
      if (mine === asked && !gone()) {
        seen = fresh;
        say('');
        draw();
      }
    } catch (e) {
      if (mine === asked) say(e.message, true);
      if (!seen) throw e;
    }
  }

  function setup() {
    return position === 'chosen' ? seen.judgement.setup : seen.judgement.setup.other;
  }

  function draw() {
    const { judgement, grid, units } = seen;
    const { length, width } = judgement.board;
    const choices = [['chosen', positions[judgement.setup.choice]], ['other', positions[judgement.setup.other.choice]]];
    which.replaceChildren(...choices.map(([value, text]) => el('option', { value, selected: value === position }, text)));
    words.replaceChildren(...seen.words.map((text, i) => el('p', i ? {} : { class: 'verdict ' + verdictClass(text) }, text)));
    const cuts = seen.cutTo[position];
    const depths = grid.top.map((top, i) => top - planeAt(cuts.faceA, grid.x[i], grid.y[i]));
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
    const held = setup().shims;
    plan.replaceChildren(svg('svg', { viewBox: '-30 -30 1060 ' + (tall + 60), role: 'img',
      'aria-label': 'Plan of the board, darker where more comes off face A, with ' + held.length + ' shims' }, svg('g', { class: 'cells' }, cells),
    svg('rect', { x: 0, y: 0, width: 1000, height: tall, class: 'ink', 'stroke-width': 3 }),
    held.map(one => svg('path', { class: 'fill', d: 'M' + one.x * wide + ' ' + (tall - one.y * wide)
      + 'm-16 ' + (one.y < width / 2 ? '26h32l-16 -24z' : '-26h32l-16 24z') }))));
    scale.textContent = 'What comes off face A: light least, ' + shown(Math.min(...depths), units) + '; dark most, '
      + shown(most, units) + '. Near edge at the bottom; the end you measured from at the left.';
    shims.replaceChildren(el('p', {}, held.length ? '' : 'It needs no shims.'), el('ol', {}, held.map(one =>
      el('li', {}, shown(one.height, units) + ' at ' + shown(one.x, units) + ' along, ' + shown(one.y, units) + ' across'))));
    const doubts = judgement.readings.suspect;
    suspects.replaceChildren(...doubts.map(one => el('p', {}, 'Looks wrong: ' + one.z.toFixed(2) + ' mm at x '
      + Math.round(one.x) + ' y ' + Math.round(one.y) + '. The others point to ' + one.expected.toFixed(2) + ' mm. ',
    el('button', { type: 'button', onclick: () => { without = String(one.line); load(); } }, 'See it without'))),
    without ? el('button', { type: 'button', onclick: () => { without = ''; load(); } }, 'Put it back') : '');
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
    const cuts = seen.cutTo[position];
    edges.replaceChildren(...[[ys[0], 'Near edge'], [ys[ys.length - 1], 'Far edge']].flatMap(([y, name]) => {
      const points = xs.map(x => ({ at: x, top: seen.grid.top[index.get(x + ' ' + y)],
        under: seen.grid.underside[index.get(x + ' ' + y)] }));
      return [el('p', {}, name), profile(points, xs.map(x => planeAt(cuts.faceA, x, y)),
        xs.map(x => planeAt(cuts.faceB, x, y)), name + ' in profile; broken lines are the finished faces')];
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
    const cuts = seen.cutTo[position];
    const points = ys.map(y => ({ at: y, top: between(grid.top, y), under: between(grid.underside, y) }));
    const off = points.map(one => one.top - planeAt(cuts.faceA, x, one.at));
    section.replaceChildren(profile(points, ys.map(y => planeAt(cuts.faceA, x, y)), ys.map(y => planeAt(cuts.faceB, x, y)),
      'Section across the board'));
    sectionWords.textContent = 'At ' + shown(x, units) + ' along, ' + shown(Math.min(...off), units) + ' to '
      + shown(Math.max(...off), units) + ' comes off face A.';
  }

  await load();
  put(el('h1', {}, seen.judgement.board.name), words, suspects,
    el('div', { class: 'two' }, el('div', {}, plan, scale,
      el('h2', {}, 'Section'), el('label', { for: 'along' }, 'Slide along the board'), slider, sectionWords, section,
      el('h2', {}, 'Edges in profile'), el('p', {}, 'Heights are drawn larger than lengths. Broken lines are the finished faces.'), edges),
    el('div', {}, el('h2', {}, 'What if'), target, skim,
      el('div', {}, el('label', { for: 'position' }, 'How it is held'), which),
      el('h2', {}, 'Shims'), shims,
      el('h2', {}, 'Take it along'),
      el('p', {}, el('a', { class: 'button', href: '/api/report?board=' + encodeURIComponent(board), download: true }, 'Report'), ' ',
        el('a', { class: 'button', href: '/api/file?board=' + encodeURIComponent(board), download: true }, 'Board file')))));
}
