import { ask, el, say, svg } from './ask.js';
import { boughtOf, pricedOf, shown } from './contract.js';

const share = chance => chance == null ? '' : chance > 0.99 ? 'over 99 %' : chance < 0.01 ? 'under 1 %' : Math.round(chance * 100) + ' %';

export async function stack(put, _, gone) {
  let answer;
  let bill = '';
  let by = 'name';
  let down = false;

  const cells = [['name', 'Board', one => one.name], ['verdict', 'Verdict', one => one.verdict],
    ['chance', 'Chance', one => share(one.chance)], ['median', 'Finishes at', one => shown(one.median, answer.units)],
    ['cost', 'Cost', one => one.cost == null ? '' : one.cost.toFixed(2)],
    ['waste', 'Waste', one => Math.round(one.waste * 100) + ' %']];

  async function load() {
    say('Judging the boards.');
    answer = await ask('stack?bill=' + encodeURIComponent(bill));
    say('');
  }

  async function again() {
    try {
      await load();
    } catch (e) {
      bill = '';
      say(e.message, true);
    }
    if (!gone()) render();
  }

  async function take(files) {
    const taken = [];
    for (const file of files) {
      try {
        if (/\.(xlsx|xls|ods|numbers)$/i.test(file.name)) throw new Error('Save the spreadsheet as CSV, or copy its cells and paste them here.');
        await ask('take?name=' + encodeURIComponent(file.name), file);
        taken.push(file.name);
      } catch (e) {
        say(file.name + ': ' + e.message, true);
        return;
      }
    }
    await again();
    if (taken.length) say('Taken in: ' + taken.join(', ') + '.');
  }

  const asFile = (text, name) => new File([text], (name || 'pasted') + '.csv', { type: 'text/csv' });

  // The rows of a bill's boards and those of its cuts come in one order.
  function layout(one, number) {
    const { said, header, rows } = answer.sawing[number];
    const { length, width } = answer.sizes[one.file];
    const scale = 1000 / length;
    return el('div', { class: 'sheet' }, el('p', {}, one.name), svg('svg', { viewBox: '-5 -5 1010 ' + (width * scale + 10), role: 'img',
      'aria-label': one.name + ': ' + one.blanks.map(blank => blank.name).join(', ') },
    svg('rect', { class: 'wood', x: 0, y: 0, width: 1000, height: width * scale, 'stroke-width': 3 }),
    one.blanks.map((blank, i) => [svg('rect', { class: 'blank', x: blank.x1 * scale, y: (width - blank.y2) * scale, 'stroke-width': 2,
      width: (blank.x2 - blank.x1) * scale, height: (blank.y2 - blank.y1) * scale }),
    svg('text', { x: (blank.x1 + blank.x2) / 2 * scale, y: (width - (blank.y1 + blank.y2) / 2) * scale + 14, 'text-anchor': 'middle',
      'font-size': 40 }, String(i + 1))])), el('p', {}, one.blanks.map((blank, i) => (i + 1) + ': ' + blank.name).join(', ')),
    said.map(words => el('p', {}, words)), rows.length ? el('div', { class: 'wide', tabindex: '0', role: 'region', 'aria-label': 'Cuts of ' + one.name },
      el('table', { class: 'cuts' }, el('thead', {}, el('tr', {}, header.map(words => el('th', { scope: 'col' }, words)))),
        el('tbody', {}, rows.map(row => el('tr', {}, row.map(words => el('td', {}, words))))))) : null);
  }

  function render() {
    const boards = [...pricedOf(answer)];
    boards.sort((one, other) => {
      const a = one[by] ?? -Infinity;
      const b = other[by] ?? -Infinity;
      return (a < b ? -1 : a > b ? 1 : 0) * (down ? -1 : 1);
    });
    const sort = name => { down = by === name ? !down : false; by = name; render(); document.getElementById('by-' + name).focus(); };
    const files = el('input', { type: 'file', id: 'files', multiple: true, accept: '.csv,.tsv,.txt', onchange: () => take(files.files) });
    const which = el('select', { id: 'bill', onchange: () => { bill = which.value; again(); } },
      el('option', { value: '' }, answer.bills.length ? 'None' : 'There is none in the folder'),
      answer.bills.map(name => el('option', { value: name, selected: name === bill }, name)));
    const name = el('input', { id: 'paste-name', autocomplete: 'off' });
    const pasted = el('textarea', { id: 'paste', rows: 3 });
    const download = (kind, words) => el('a', { class: 'button', download: true,
      href: '/api/stack-file?kind=' + kind + '&bill=' + encodeURIComponent(bill) }, words);
    put(el('h1', {}, 'Stack'),
      boards.length ? el('div', { class: 'wide', tabindex: '0', role: 'region', 'aria-label': 'All boards' }, el('table', {},
        el('thead', {}, el('tr', {}, cells.map(([name, words]) => el('th', { scope: 'col',
          'aria-sort': by === name ? (down ? 'descending' : 'ascending') : undefined },
        el('button', { type: 'button', id: 'by-' + name, onclick: () => sort(name) }, words))))),
        el('tbody', {}, boards.map(one => el('tr', {}, cells.map(([name, , show]) => el('td', name === 'name' || name === 'verdict'
          ? {} : { class: 'n' }, name === 'name' ? el('a', { class: 'button', href: '#/see/' + encodeURIComponent(one.file) }, one.name)
          : show(one)))))))) : el('p', {}, 'There is no board to price yet.'),
      answer.troubles.map(one => el('p', { class: 'no' }, (one.file ? one.file + ': ' : '') + one.trouble)),
      el('h2', {}, 'What to buy'), el('div', { class: 'noprint' }, el('label', { for: 'bill' }, 'Cutting bill'), which),
      el('div', { id: 'buying' }, (answer.buying || []).map((words, i) => el('p', i ? {} : { class: 'where' }, words)),
        boughtOf(answer).map(layout), boughtOf(answer).length ? el('p', {}, answer.care) : null),
      boards.length ? el('p', { class: 'row noprint' }, download('csv', 'Table as CSV'), download('report', 'Report'),
        download('sheet', 'Sheet'), el('button', { type: 'button', onclick: () => print() }, 'Print')) : null,
      el('section', { class: 'noprint' }, el('h2', {}, 'Take boards and bills in'), el('p', {}, 'Choose files, drop them anywhere on this screen, or paste.'),
        el('label', { for: 'files' }, 'Files'), files,
        el('form', { onsubmit: event => { event.preventDefault(); take([asFile(pasted.value, name.value.trim())]); } },
          el('label', { for: 'paste-name' }, 'Name of what is pasted'), name,
          el('label', { for: 'paste' }, 'Cells of a spreadsheet, or the text of a file'), pasted,
          el('p', {}, el('button', { type: 'submit', id: 'take-pasted' }, 'Take it in')))));
  }

  const drop = event => { event.preventDefault(); if (event.type === 'drop') take(event.dataTransfer.files); };
  const paste = event => {
    if (event.target.closest?.('input, textarea')) return;
    const files = event.clipboardData.files;
    const text = event.clipboardData.getData('text/plain');
    if (files.length) take(files);
    else if (text.trim()) take([asFile(text)]);
  };
  addEventListener('dragover', drop);
  addEventListener('drop', drop);
  addEventListener('paste', paste);
  await load();
  render();
  return () => { removeEventListener('dragover', drop); removeEventListener('drop', drop); removeEventListener('paste', paste); };
}
