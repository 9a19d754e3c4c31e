// Requests, and small pieces of the page. Text goes in as text only, so that no name can become markup.
export async function ask(path, body) {
  const how = body === undefined ? {} : { method: 'POST', body: body instanceof Blob ? body : JSON.stringify(body) };
  let answer;
  try {
    answer = await fetch('/api/' + path, { ...how, signal: AbortSignal.timeout(15000) });
  } catch (e) {
    throw Object.assign(new Error('The bench does not answer.'), { away: true });
  }
  if (answer.status === 204) return null;
  let said;
  try {
    said = await answer.json();
  } catch (e) {
    throw Object.assign(new Error('The bench broke off its answer.'), { away: true });
  }
  if (!answer.ok) throw Object.assign(new Error(said.trouble), { status: answer.status, away: answer.status === 503 });
  return said;
}

export function el(name, set = {}, ...inside) {
  const made = document.createElement(name);
  put(made, set);
  made.append(...inside.flat(Infinity).filter(one => one !== null && one !== undefined));
  return made;
}

export function svg(name, set = {}, ...inside) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', name);
  put(made, set);
  made.append(...inside.flat(Infinity));
  return made;
}

function put(made, set) {
  for (const [key, value] of Object.entries(set)) {
    if (key.startsWith('on')) made.addEventListener(key.slice(2), value);
    else if (value === true) made.setAttribute(key, '');
    else if (value !== false && value !== undefined) made.setAttribute(key, value);
  }
}

export function say(words, bad = false) {
  const line = document.getElementById('line');
  line.textContent = words;
  line.className = bad ? 'bad' : '';
}

export const field = (id, label, set = {}) =>
  el('div', {}, el('label', { for: id }, label), el('input', { id, name: id, autocomplete: 'off', ...set }));

export const verdictClass = words => /^YES/.test(words) || /^So far YES/.test(words) ? 'yes'
  : /^(NO|So far NO)/.test(words) ? 'no' : /DOUBTFUL|doubtful/.test(words) ? 'doubtful' : '';
