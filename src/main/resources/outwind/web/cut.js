import { ask, el, say } from './ask.js';
import { outbox } from './outbox.js';

const POLL = 1500;

export async function cut(put, board, gone) {
  let state = await ask('cut?board=' + encodeURIComponent(board));
  let awake = null;
  let drawing = false;

  async function stayAwake() {
    try {
      awake = await navigator.wakeLock?.request('screen');
    } catch (e) {
      awake = null;
    }
  }

  // What was ticked or typed shows at once; the bench's answer replaces it.
  const waiting = outbox(board, {
    answered: (order, answer) => {
      state = answer;
      say('Kept.');
      if (!gone()) render();
    },
    refused: (order, e) => {
      say(e.message, true);
      if (!gone()) render();
    },
    away: orders => say('Not saved yet: ' + orders.map(order => order.words).join('; ') + '. Sent when the bench answers.', true),
  });

  function order(path, body, words, focus) {
    waiting.add(path, body, words);
    render();
    if (focus) document.getElementById(focus)?.focus();
  }

  const unsent = (path, fits) => waiting.orders.filter(one => one.path === path && fits(one.body)).pop()?.body;
  const isDone = step => unsent('tick', body => body.step === step.id)?.done ?? step.done;
  const read = place => unsent('face-b', body => body.place === place)?.height ?? state.checks[place].read;

  function check(place, height, focus) {
    if (height.trim().replace(',', '.') !== read(place).trim().replace(',', '.')) {
      order('face-b', { place, height }, height + ' at ' + state.checks[place].at, focus);
    }
  }

  // What is being typed stays when the screen is drawn again, and so does the place on it.
  function render() {
    const { id = '', value } = document.activeElement || {};
    drawing = true;
    draw();
    drawing = false;
    const again = /^(check|step)-/.test(id) && document.getElementById(id);
    if (again) {
      if (id.startsWith('check-')) again.value = value;
      again.focus();
    }
  }

  const tick = (id, text, done) => el('li', { class: done ? 'done' : '' }, el('label', { for: 'step-' + id },
    el('input', { type: 'checkbox', id: 'step-' + id, checked: done,
      onchange: event => order('tick', { step: id, done: event.target.checked }, text) }), el('span', {}, text)));

  function draw() {
    if (state.why) {
      put(el('h1', {}, 'No cut is planned'), state.why.map(words => el('p', { class: 'where' }, words)));
      return;
    }
    const left = state.steps.filter(step => !isDone(step)).length;
    const next = left > 0 ? '' : state.faceB === undefined ? 'Read face B at these places.' : '';
    put(el('h1', {}, state.faceBDone ? 'Done' : 'Cut it'),
      state.stale ? el('p', { class: 'no' }, 'The readings changed since these steps were ticked. Begin with the first.') : null,
      state.steps.filter(step => !isDone(step)).slice(0, 1).map(step => el('div', { class: 'afar', 'aria-hidden': 'true' },
        step.size ? el('p', { class: 'length' }, step.size) : null, el('p', {}, step.text))),
      el('ol', { class: 'steps' }, state.steps.map(step => tick(step.id, step.text, isDone(step)))),
      el('h2', {}, 'Check face B'),
      el('p', {}, next || 'With face A down on the bed and zero on the bed, type what face B reads.'),
      state.checks.map((one, i) => el('div', {}, el('label', { for: 'check-' + i }, one.at + ', should read '
        + one.expected + ' ' + state.units + ' (limit ' + one.limit + ')'),
      el('input', { id: 'check-' + i, inputmode: 'decimal', autocomplete: 'off', value: read(i),
        onkeydown: event => { if (event.key === 'Enter') check(i, event.target.value, i + 1 < state.checks.length ? 'check-' + (i + 1) : 'face-b-answer'); },
        onblur: event => { if (!drawing) check(i, event.target.value); } }))),
      el('div', { id: 'face-b-answer', tabindex: '-1', role: 'status' }, state.faceB === undefined ? [] : [
        el('h2', {}, state.moved ? 'It has moved: here is the new plan' : 'As expected'),
        state.faceB.map((words, i) => el('p', { class: i ? 'where' : 'verdict ' + (state.moved ? 'moved' : 'yes') }, words)),
        el('ol', { class: 'steps' }, tick('face-b', 'Face B is cut.', isDone({ id: 'face-b', done: state.faceBDone })))]));
  }

  render();
  waiting.send();
  await stayAwake();
  // A screen that was switched off lets go of the lock.
  const again = () => { if (!document.hidden) stayAwake(); };
  document.addEventListener('visibilitychange', again);
  const poll = setInterval(async () => {
    const focused = document.activeElement;
    if (document.hidden || waiting.orders.length || (focused?.id || '').startsWith('check-')) return;
    try {
      const before = JSON.stringify(state);
      const fresh = await ask('cut?board=' + encodeURIComponent(board));
      if (gone() || (document.activeElement?.id || '').startsWith('check-') || JSON.stringify(state) !== before || JSON.stringify(fresh) === before) return;
      state = fresh;
      render();
      document.getElementById(focused?.id)?.focus();
    } catch (e) {
      if (e.away) say('The bench does not answer. What you enter is kept here until it does.', true);
    }
  }, POLL);
  return () => {
    clearInterval(poll);
    waiting.close();
    document.removeEventListener('visibilitychange', again);
    awake?.release();
  };
}
