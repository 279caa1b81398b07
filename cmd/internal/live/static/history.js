// Undo and redo: the texts of the design, one after another.
import { state } from './state.js';

const past = [];
const future = [];
const most = 300;
let last = { kind: '', at: 0 };

/** Remembers a text before it changes. What is typed into one field or dragged in one go is one step. */
export function step(text, request) {
  const typed = (request.changes ?? []).map((c) => c.key).join(' '); // of requests that were joined several
  const kind = request.gesture ? 'drag ' + request.gesture : typed;
  const now = Date.now();
  const same = kind !== '' && kind === last.kind && (request.gesture || now - last.at < 1200);
  if (!same) past.push(text);
  last = { kind, at: now };
  past.splice(0, past.length - most);
  future.length = 0;
  buttons();
}

function buttons() {
  document.getElementById('undo').disabled = past.length === 0;
  document.getElementById('redo').disabled = future.length === 0;
}

export function bindHistory(show) {
  const move = (from, to) => {
    if (from.length === 0) return;
    to.push(state.text);
    last = { kind: '', at: 0 };
    show(from.pop());
    buttons();
  };
  document.getElementById('undo').onclick = () => move(past, future);
  document.getElementById('redo').onclick = () => move(future, past);
  document.addEventListener('keydown', (e) => {
    if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== 'z' && e.key.toLowerCase() !== 'y') return;
    e.preventDefault();
    if (e.key.toLowerCase() === 'y' || e.shiftKey) move(future, past); else move(past, future);
  });
}
