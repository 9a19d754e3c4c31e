// What the page reads of a judgement and of a stack as scripts get them; the names of their fields stand here alone.
export const boardOf = seen => seen.judgement.board;
export const setupOf = (seen, position) => position === 'chosen' ? seen.judgement.setup : seen.judgement.setup.other;
const POSITIONS = { asMeasured: 'as measured', levelled: 'levelled' };
export const positionsOf = seen => [['chosen', POSITIONS[seen.judgement.setup.choice]],
  ['other', POSITIONS[seen.judgement.setup.other.choice]]];
export const suspectsOf = seen => seen.judgement.readings.suspects;
export const pricedOf = answer => answer.stack ? answer.stack.boards : [];
export const boughtOf = answer => answer.stack && answer.stack.bill ? answer.stack.bill.boards.map(one =>
  ({ name: one.name, file: one.file, blanks: one.layout.sections.flat() })) : [];
export const shown = (mm, units) => units === 'in' ? (mm / 25.4).toFixed(3) + ' in' : mm.toFixed(1) + ' mm';
export const fine = (mm, units) => units === 'in' ? (mm / 25.4).toFixed(3) + ' in' : mm.toFixed(2) + ' mm';
// A place to find with a rule: whole millimetres, or eighths of an inch.
export const place = (mm, units) => {
  if (units !== 'in') {
    return Math.round(mm) + ' mm';
  }
  let top = Math.round(mm / 25.4 * 8);
  const whole = Math.floor(top / 8);
  let bottom = 8;
  for (top -= 8 * whole; top > 0 && top % 2 === 0; top /= 2) {
    bottom /= 2;
  }
  return [whole > 0 || top === 0 ? whole : '', top > 0 ? top + '/' + bottom : ''].filter(part => part !== '').join(' ') + ' in';
};
