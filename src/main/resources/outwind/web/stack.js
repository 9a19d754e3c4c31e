import { ask, el, say } from './ask.js';

export async function stack(put, _, gone) {
  let answer;
  let by = 'name';
  let down = false;

  const cells = [['name', 'Board', one => one.name], ['verdict', 'Verdict', one => one.verdict],
    ['chance', 'Chance', one => one.chance === undefined ? '' : one.chance > 0.99 ? 'over 99 %' : one.chance < 0.01 ? 'under 1 %' : Math.round(one.chance * 100) + ' %'],
    ['median', 'Finishes at (mm)', one => one.median.toFixed(1)], ['cost', 'Cost', one => one.cost === undefined ? '' : one.cost.toFixed(2)],
    ['waste', 'Waste', one => Math.round(one.waste * 100) + ' %']];

  async function load() {
    say('Judging the boards.');
    answer = await ask('stack');
    say('');
  }

  async function take(files) {
    for (const file of files) {
      try {
        await ask('take?name=' + encodeURIComponent(file.name), file);
        say('Taken in: ' + file.name + '.');
      } catch (e) {
        say(file.name + ': ' + e.message, true);
        return;
      }
    }
    await load();
    if (!gone()) render();
  }

  function render() {
    const boards = answer.stack ? JSON.parse(answer.stack).boards : [];
    boards.sort((one, other) => {
      const a = one[by] ?? -Infinity;
      const b = other[by] ?? -Infinity;
      return (a < b ? -1 : a > b ? 1 : 0) * (down ? -1 : 1);
    });
    const sort = name => { down = by === name ? !down : false; by = name; render(); document.getElementById('by-' + name).focus(); };
    const files = el('input', { type: 'file', id: 'files', multiple: true, accept: '.csv,.tsv,.txt', onchange: () => take(files.files) });
    put(el('h1', {}, 'Stack'),
      el('div', { class: 'wide', tabindex: '0', role: 'region', 'aria-label': 'All boards' }, el('table', {},
        el('thead', {}, el('tr', {}, cells.map(([name, words]) => el('th', { scope: 'col',
          'aria-sort': by === name ? (down ? 'descending' : 'ascending') : undefined },
        el('button', { type: 'button', id: 'by-' + name, onclick: () => sort(name) }, words))))),
        el('tbody', {}, boards.map(one => el('tr', {}, cells.map(([name, , show]) => el('td', name === 'name' || name === 'verdict'
          ? {} : { class: 'n' }, name === 'name' ? el('a', { class: 'button', href: '#/see/' + encodeURIComponent(one.file) }, one.name)
          : show(one)))))))),
      answer.troubles.map(one => el('p', { class: 'no' }, one.file + ': ' + one.trouble)),
      el('div', { class: 'row noprint' }, el('div', {}, el('label', { for: 'files' }, 'Take in board files'), files),
        el('button', { type: 'button', onclick: save }, 'Download as CSV'),
        el('button', { type: 'button', onclick: () => print() }, 'Print')));
  }

  function save() {
    const link = el('a', { href: URL.createObjectURL(new Blob([answer.csv || ''], { type: 'text/csv' })), download: 'stack.csv' });
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  }

  const drop = event => { event.preventDefault(); if (event.type === 'drop') take(event.dataTransfer.files); };
  addEventListener('dragover', drop);
  addEventListener('drop', drop);
  await load();
  render();
  return () => { removeEventListener('dragover', drop); removeEventListener('drop', drop); };
}
