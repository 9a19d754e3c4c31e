import { ask, el, say } from './ask.js';

export async function cut(put, board, gone) {
  let state = await ask('cut?board=' + encodeURIComponent(board));
  let awake = null;

  async function stayAwake() {
    try {
      awake = await navigator.wakeLock?.request('screen');
    } catch (e) {
      awake = null;
    }
  }

  async function order(path, body, focus) {
    try {
      state = await ask(path, { board, ...body });
      say('Kept.');
      if (!gone()) render();
      if (focus) document.getElementById(focus)?.focus();
    } catch (e) {
      say(e.message, true);
      if (!gone()) render();
    }
  }

  const tick = (id, text, done) => el('li', { class: done ? 'done' : '' }, el('label', { for: 'step-' + id },
    el('input', { type: 'checkbox', id: 'step-' + id, checked: done,
      onchange: event => order('tick', { step: id, done: event.target.checked }, 'step-' + id) }), el('span', {}, text)));

  function render() {
    if (state.why) {
      put(el('h1', {}, 'No cut is planned'), state.why.map(words => el('p', { class: 'where' }, words)));
      return;
    }
    const left = state.steps.filter(step => !step.done).length;
    const next = left > 0 ? '' : state.faceB === undefined ? 'Read face B at these places.' : '';
    put(el('h1', {}, state.faceBDone ? 'Done' : 'Cut it'),
      state.stale ? el('p', { class: 'no' }, 'The readings changed since these steps were ticked. Begin with the first.') : null,
      el('ol', { class: 'steps' }, state.steps.map(step => tick(step.id, step.text, step.done))),
      el('h2', {}, 'Check face B'),
      el('p', {}, next || 'With face A down on the bed and zero on the bed, type what face B reads.'),
      state.checks.map((check, i) => el('div', {}, el('label', { for: 'check-' + i }, check.at + ', should read '
        + check.expected + ' ' + state.units + ' (limit ' + check.limit + ')'),
      el('input', { id: 'check-' + i, inputmode: 'decimal', autocomplete: 'off', value: check.read,
        onchange: event => order('face-b', { place: i, height: event.target.value },
          i + 1 < state.checks.length ? 'check-' + (i + 1) : 'face-b-answer') }))),
      el('div', { id: 'face-b-answer', tabindex: '-1', role: 'status' }, state.faceB === undefined ? [] : [
        el('h2', {}, state.moved ? 'It has moved: here is the new plan' : 'As expected'),
        state.faceB.map((words, i) => el('p', { class: i ? 'where' : 'verdict ' + (state.moved ? 'moved' : 'yes') }, words)),
        el('ol', { class: 'steps' }, tick('face-b', 'Face B is cut.', state.faceBDone))]));
  }

  render();
  await stayAwake();
  return () => awake?.release();
}
