import { ask } from './ask.js';

const RETRY = 1000;

// What was entered for a board and not yet answered for. It outlives a reload, is sent in the order in which it was
// entered, and is sent again until the bench answers; the bench does each order once.
export function outbox(board, { prepared = body => body, answered, refused, away }) {
  const mark = 'outwind-order-' + board + '-';
  const names = Object.keys(localStorage).filter(name => name.startsWith(mark)).sort();
  const orders = names.map(name => ({ name, ...JSON.parse(localStorage.getItem(name)) }));
  let closed = false;
  let sending = false;

  function keep({ name, ...order }) {
    localStorage.setItem(name, JSON.stringify(order));
  }

  function done(order) {
    orders.splice(orders.indexOf(order), 1);
    localStorage.removeItem(order.name);
  }

  async function send() {
    if (sending) return;
    sending = true;
    while (orders.length && !closed) {
      const order = orders[0];
      // Once it was sent it stays as it is, so that the bench knows it again.
      if (!order.sent) {
        Object.assign(order, { sent: true, body: prepared(order.body) });
        keep(order);
      }
      try {
        const answer = await ask(order.path, order.body);
        done(order);
        answered(order, answer);
      } catch (e) {
        if (e.away) {
          if (!closed) away(orders);
          await new Promise(resolve => setTimeout(resolve, RETRY));
        } else {
          done(order);
          refused(order, e);
        }
      }
    }
    sending = false;
  }

  return {
    orders,
    // words say what is kept, for the person.
    add(path, body, words) {
      const name = mark + Date.now() + '-' + Math.random().toString(36).slice(2);
      const order = { name, path, body: { board, ...body }, words };
      keep(order);
      orders.push(order);
      send();
    },
    send,
    close() { closed = true; },
  };
}
