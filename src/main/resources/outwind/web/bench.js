import { ask, el, field, say } from './ask.js';
import { measure } from './measure.js';
import { see } from './see.js';
import { cut } from './cut.js';
import { stack } from './stack.js';

const main = document.getElementById('main');
let leave = () => {};

const at = (screen, board) => '#/' + screen + (board ? '/' + encodeURIComponent(board) : '');

function navigation(screen, board) {
  const items = [['boards', 'Boards', '']];
  if (board) items.push(['measure', 'Measure', board], ['see', 'See', board], ['cut', 'Cut', board]);
  items.push(['stack', 'Stack', '']);
  document.getElementById('nav').replaceChildren(...items.map(([name, words, of]) =>
    el('a', { href: at(name, of), 'aria-current': name === screen ? 'page' : undefined }, words)));
}

async function boards(put) {
  const { boards } = await ask('boards');
  put(el('h1', {}, 'Boards'),
    el('p', {}, boards.length ? 'Choose a board, or begin another.' : 'There is no board here yet. Begin one.'),
    el('p', {}, el('a', { class: 'button', href: at('new') }, 'Begin a board')),
    el('ul', { class: 'boards' }, boards.map(one => el('li', {}, el('a', {
      class: 'button', href: at(one.left > 0 ? 'measure' : 'see', one.file) }, one.name), ' ',
    one.trouble ? el('span', { class: 'no' }, one.trouble)
      : one.readings + (one.readings === 1 ? ' reading' : ' readings') + (one.left > 0 ? ', ' + one.left + ' to go' : '')))));
}

function begin(put) {
  const form = el('form', { onsubmit: async event => {
    event.preventDefault();
    try {
      const { file } = await ask('begin', Object.fromEntries(new FormData(form)));
      location.hash = at('measure', file);
    } catch (e) {
      say(e.message, true);
    }
  } },
  field('name', 'What you call it'),
  el('div', {}, el('label', { for: 'units' }, 'Unit'), el('select', { id: 'units', name: 'units' },
    el('option', { value: 'mm' }, 'mm'), el('option', { value: 'in' }, 'inches'))),
  field('length', 'Length along the grain', { required: true }), field('width', 'Width', { required: true }),
  field('thickness', 'Rough thickness, by caliper', { required: true }),
  field('target', 'Thickness wanted (may be empty)'),
  field('columns', 'Places along', { value: 5, inputmode: 'numeric' }),
  field('rows', 'Places across', { value: 3, inputmode: 'numeric' }),
  el('p', {}, el('button', { class: 'main', type: 'submit' }, 'Begin')));
  put(el('h1', {}, 'Begin a board'), form);
}

const SCREENS = { boards, new: begin, measure, see, cut, stack };

async function show() {
  leave();
  leave = () => {};
  let gone = false;
  leave = () => { gone = true; };
  const [, screen = 'boards', name = ''] = location.hash.split('/');
  const board = decodeURIComponent(name);
  const known = SCREENS[screen] ? screen : 'boards';
  navigation(known, board);
  say('');
  const put = (...inside) => { if (!gone) main.replaceChildren(...inside.flat(Infinity).filter(Boolean)); };
  const before = leave;
  try {
    const after = await SCREENS[known](put, board, () => gone);
    if (typeof after === 'function') {
      if (gone) after(); else leave = () => { before(); after(); };
    }
  } catch (e) {
    put(el('h1', {}, 'Not now'), el('p', {}, e.message),
      el('p', {}, el('button', { type: 'button', onclick: show }, 'Try again')));
  }
  // A screen may have put the focus where one types.
  if (!gone && !main.contains(document.activeElement)) main.focus({ preventScroll: true });
}

addEventListener('hashchange', show);
show();
