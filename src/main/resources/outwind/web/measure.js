import { ask, el, say, svg, verdictClass } from './ask.js';
import { shown } from './contract.js';
import { outbox } from './outbox.js';

const POLL = 700;

export function parse(text) {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  const found = /^([+-]?)(?:(\d+(?:\.\d*)?|\.\d+)|(?:(\d+)\s+)?(\d+)\/([1-9]\d*))$/.exec(plain);
  if (!found) return NaN;
  const size = found[2] !== undefined ? Number(found[2]) : Number(found[3] || 0) + found[4] / found[5];
  return found[1] === '-' ? -size : size;
}

export async function measure(put, board, gone) {
  let state = await ask('measure?board=' + encodeURIComponent(board));
  let chosen = null;
  let byLast = false;
  let insists = null;
  let bench = 'there';
  const waiting = outbox(board, { prepared: body => ({ base: state.revision, ...body }), answered, refused, away: () => { bench = 'away'; render(); } });

  const title = el('h1', {});
  const soFar = el('p', { class: 'verdict', role: 'status' });
  const where = el('p', { class: 'where', id: 'where' });
  const doubt = el('p', { class: 'doubtful', role: 'alert' });
  const plan = el('div', { class: 'sheet' });
  const height = el('input', { class: 'height', id: 'height', inputmode: 'none', autocomplete: 'off',
    'aria-label': 'Height', 'aria-describedby': 'where', oninput: () => { insists = null; } });
  const caliper = el('input', { id: 'caliper', inputmode: 'none', autocomplete: 'off', onfocus: () => { typing = caliper; } });
  const calipers = el('ul', {});
  const narrowing = el('div', { class: 'sheet', hidden: true });
  const ranges = [];
  let typing = height;
  height.addEventListener('focus', () => { typing = height; });
  const by = el('button', { type: 'button', 'aria-pressed': 'false', onclick: () => {
    byLast = !byLast;
    by.setAttribute('aria-pressed', byLast);
    render();
  } }, 'Same as last ±');
  const jump = el('select', { id: 'jump', onchange: () => choose(Number(jump.value)) });
  const note = el('input', { id: 'note', autocomplete: 'off' });

  // Readings that the bench has not answered for yet.
  const unsent = () => waiting.orders.filter(order => order.path === 'touch').map(order => order.body);
  const isUnsent = place => unsent().some(one => one.x === place.x && one.y === place.y);

  function last() {
    const read = [...state.entries.filter(one => one.height !== undefined), ...unsent()];
    return read.length ? read[read.length - 1] : null;
  }

  function spot() {
    if (chosen !== null) return chosen;
    if (unsent().length) return state.plan.find(one => !one.done && !isUnsent(one)) || null;
    if (state.next !== undefined) return state.plan[state.next];
    return state.worthwhile || null;
  }

  function choose(number) {
    chosen = state.plan[number];
    insists = null;
    doubt.textContent = '';
    render();
    height.focus();
  }

  function draw() {
    const scale = 1000 / state.length;
    const tall = state.width * scale;
    const px = one => [one.x * scale, tall - one.y * scale];
    const here = spot();
    const r = Math.max(7, Math.min(16, tall / 12));
    const drawing = svg('svg', { viewBox: '-25 -25 1050 ' + (tall + 50), 'aria-hidden': 'true' },
      svg('rect', { x: 0, y: 0, width: 1000, height: tall, class: 'wood', 'stroke-width': 3 }),
      state.plan.map(one => {
        const [x, y] = px(one);
        return svg('circle', { cx: x, cy: y, r, 'stroke-width': 3, class: 'spot' + (one.done || isUnsent(one) ? ' done' : '') });
      }));
    if (here) {
      const [x, y] = px(here);
      drawing.append(svg('circle', { cx: x, cy: y, r: r * 1.6, 'stroke-width': 3, class: 'spot here' }));
    }
    drawing.addEventListener('click', event => {
      const box = drawing.getBoundingClientRect();
      const x = (event.clientX - box.left) / box.width * 1050 - 25;
      const y = (event.clientY - box.top) / box.height * (tall + 50) - 25;
      const far = state.plan.map(one => Math.hypot(px(one)[0] - x, px(one)[1] - y));
      choose(far.indexOf(Math.min(...far)));
    });
    plan.replaceChildren(drawing);
  }

  function render() {
    const here = spot();
    const done = state.plan.filter(one => one.done).length;
    title.textContent = state.name + ', ' + state.size + (state.target ? ', to finish at ' + state.target : '');
    soFar.textContent = (state.soFar || 'The verdict begins with the sixth reading.')
      + (state.settled ? ' That settles it: further readings would hardly change the verdict.' : '');
    soFar.className = 'verdict ' + verdictClass(soFar.textContent);
    where.textContent = here ? (state.worthwhile === here ? 'One more that would tell most: '
      : 'Place ' + (state.plan.indexOf(here) + 1) + ' of ' + state.plan.length + ': ') + here.at
      + (here.again ? ', once more' : '') + (byLast && last() ? '. Last: ' + last().height : '')
      : 'All ' + done + ' places are read. See what comes of it.';
    jump.replaceChildren(...(here && state.plan.includes(here) ? [] : [el('option', { value: '', selected: true, disabled: true }, 'Choose')]),
      ...state.plan.map((one, i) => el('option', { value: i, selected: one === here },
      (i + 1) + ': ' + one.at + (one.height ? ', ' + one.height : one.done ? ', left out' : ''))));
    draw();
    calipers.replaceChildren(...state.calipers.map(one => el('li', {}, one.thickness + ' at ' + one.at)));
    narrow();
    if (waiting.orders.length && bench === 'away') {
      say('Not saved yet: ' + waiting.orders.map(order => order.words).join('; ') + '. Sent when the bench answers.', true);
    }
  }

  // The range of what it will finish at, reading by reading, as far as this screen saw it.
  function narrow() {
    if (state.median === undefined) return;
    const count = state.entries.filter(one => one.height !== undefined).length;
    while (ranges.length && ranges[ranges.length - 1].count >= count) ranges.pop();
    ranges.push({ count, low: state.low, median: state.median, high: state.high });
    const target = state.targetLength;
    const every = [...ranges.flatMap(one => [one.low, one.high]), ...(target ? [target] : [])];
    const low = Math.min(...every);
    const high = Math.max(...every, low + 0.5);
    const first = ranges[0].count;
    const last = Math.max(state.plan.length, count, first + 1);
    const px = n => 40 + (n - first) / (last - first) * 920;
    const py = mm => 190 - (mm - low) / (high - low) * 170;
    narrowing.hidden = false;
    narrowing.replaceChildren(el('p', {}, 'It finishes between ' + shown(state.low, state.units) + ' and '
      + shown(state.high, state.units) + ' (90 %)' + (target ? '. The broken line is the ' + state.target + ' wanted.' : '.')),
    svg('svg', { viewBox: '0 0 1000 210', role: 'img', 'aria-label': 'How the range narrowed with each reading' },
      target ? svg('path', { class: 'markline', 'stroke-width': 3, 'stroke-dasharray': '14 8', d: 'M0 ' + py(target) + 'H1000' }) : [],
      ranges.map(one => svg('path', { class: 'ink', 'stroke-width': 10, d: 'M' + px(one.count) + ' ' + py(one.low) + 'V' + py(one.high) })),
      ranges.map(one => svg('circle', { class: 'fill', cx: px(one.count), cy: py(one.median), r: 11 }))));
  }

  function take(fresh) {
    state = fresh;
    if (chosen) chosen = state.plan.find(one => one.x === chosen.x && one.y === chosen.y && one.again === chosen.again) || null;
    render();
  }

  function answered({ path, body, words }, answer) {
    bench = 'there';
    if (path === 'touch' && !answer.kept) {
      say('');
      height.value = body.height;
      byLast = false;
      by.setAttribute('aria-pressed', 'false');
      doubt.textContent = answer.doubt || answer.conflict;
      insists = answer.doubt ? body.height : null;
      chosen = answer.plan.find(one => one.x === body.x && one.y === body.y) || null;
    } else {
      say('Kept: ' + words + '.');
      doubt.textContent = '';
      chosen = null;
      insists = null;
    }
    take(answer);
  }

  function refused(order, e) {
    bench = 'there';
    say(e.message, true);
    render();
  }

  function keep() {
    const here = spot();
    if (!here) return;
    let typed = height.value.trim();
    if (!typed && byLast && last()) typed = '0';
    if (!typed) {
      say('Type what it reads here.', true);
      return;
    }
    if (byLast && last()) {
      const sum = parse(last().height) + parse(typed);
      if (Number.isNaN(sum)) {
        say('Type by how much it differs, as 0.3 or -0.12.', true);
        return;
      }
      typed = String(Math.round(sum * 1e6) / 1e6);
    }
    enter('touch', { base: state.revision, x: here.x, y: here.y, height: typed, insists: insists === typed }, typed + ' at ' + here.at);
    chosen = null;
    height.value = '';
    render();
  }

  function enter(path, body, words) {
    waiting.add(path, body, words);
  }

  function press(key) {
    insists = null;
    const old = typing.value;
    if (key === '⌫') typing.value = old.slice(0, -1);
    else if (key === '±') typing.value = old.startsWith('-') ? old.slice(1) : '-' + old;
    else typing.value += key === 'space' ? ' ' : key;
  }

  const names = { '⌫': 'Delete last', '±': 'Change sign', '/': 'Fraction bar', ',': 'Decimal comma', '.': 'Decimal point' };
  const keys = ['7', '8', '9', '⌫', '4', '5', '6', '±', '1', '2', '3', state.units === 'in' ? '/' : ',', '0', '.'];
  if (state.units === 'in') keys.push('space');
  const form = el('form', { onsubmit: event => { event.preventDefault(); keep(); } }, where, doubt, height,
    el('div', { class: 'keys' }, keys.map(key => el('button', { type: 'button', 'aria-label': names[key],
      onclick: () => press(key) }, key)), el('button', { class: 'main', type: 'submit', id: 'keep' }, 'Keep')),
    el('div', { class: 'row' }, by,
      el('button', { type: 'button', onclick: () => enter('undo', {}, 'the last one is taken back') }, 'Take back'),
      el('button', { type: 'button', onclick: () => spot() && enter('skip', { x: spot().x, y: spot().y }, spot().at + ' is left out') }, 'Leave out')),
    el('label', { for: 'jump' }, 'Go to a place'), jump);
  const noting = el('form', { onsubmit: event => {
    event.preventDefault();
    enter('note', { note: note.value }, 'the note');
    note.value = '';
  } }, el('label', { for: 'note' }, 'Note beside the last reading'),
  el('div', { class: 'row' }, note, el('button', { type: 'submit' }, 'Write it')));
  const calipering = el('form', { onsubmit: event => {
    event.preventDefault();
    const here = spot() || last();
    if (!here || !caliper.value.trim()) say('Type the rough thickness here.', true);
    else {
      enter('caliper', { x: here.x, y: here.y, thickness: caliper.value }, 'thickness ' + caliper.value + ' at ' + here.at);
      caliper.value = '';
    }
  } }, el('label', { for: 'caliper' }, 'Rough thickness here, by caliper'),
  el('div', { class: 'row' }, caliper, el('button', { type: 'submit', id: 'keep-caliper' }, 'Keep thickness'),
    el('button', { type: 'button', onclick: () => enter('caliper-back', {}, 'the last thickness is taken back') }, 'Take thickness back')), calipers);
  put(title, soFar, el('div', { class: 'two' }, el('div', {}, plan, narrowing), el('div', {}, form, calipering, noting)));
  render();
  height.focus();
  waiting.send();

  const poll = setInterval(async () => {
    if (waiting.orders.length || document.hidden) return;
    try {
      const fresh = await ask('measure?board=' + encodeURIComponent(board) + '&known=' + state.revision + '&judged=' + state.judged);
      bench = 'there';
      if (fresh && !waiting.orders.length && !gone()) take(fresh);
    } catch (e) {
      if (e.away) say('The bench does not answer. What you type is kept here until it does.', true);
    }
  }, POLL);
  return () => { clearInterval(poll); waiting.close(); };
}
