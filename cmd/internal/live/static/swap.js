// Puts what an answer holds in its place, and leaves the maker's hand where it is.
import { state } from './state.js';

/** @param {Record<string, string>} parts HTML by the id of its element, made by the program */
export function swap(parts) {
  for (const [id, html] of Object.entries(parts)) {
    const place = document.getElementById(id);
    if (!place) continue;
    const active = document.activeElement;
    const inside = place.contains(active) && active !== place;
    const hand = inside ? { id: active.id, value: active.value, from: active.selectionStart, to: active.selectionEnd, grip: active.dataset.grip } : null;
    const closed = new Map([...place.querySelectorAll('details[id]')].map((d) => [d.id, d.open]));
    place.innerHTML = html;
    for (const d of place.querySelectorAll('details[id]')) if (closed.has(d.id)) d.open = closed.get(d.id);
    if (hand) back(place, hand);
  }
  for (const c of state.pending) {
    const field = fieldOf(c);
    if (field && field !== document.activeElement) field.value = c.value;
  }
}

function back(place, hand) {
  const at = hand.id ? document.getElementById(hand.id) : hand.grip && place.querySelector(`[data-grip="${hand.grip}"]`);
  if (!at) return;
  at.focus({ preventScroll: true });
  if (at.tagName === 'INPUT' && hand.from !== null) {
    at.value = hand.value;
    at.setSelectionRange(hand.from, hand.to);
  }
}

/** Returns the input of a key, that of the size shown first. */
export function fieldOf({ key, size = state.own, row = 0 }) {
  const all = [...document.querySelectorAll('#form [data-key]')].filter((f) => f.dataset.key === key && Number(f.dataset.row ?? 0) === row);
  return all.find((f) => (f.dataset.size ?? '') === size) ?? all[0];
}

/** Says what is wrong: beside its field, or above the form where it has none. */
export function showFaults(faults, request) {
  for (const p of document.querySelectorAll('#form .fault')) p.textContent = '';
  for (const f of document.querySelectorAll('#form [aria-invalid]')) f.removeAttribute('aria-invalid');
  const rest = [];
  const typed = (request.changes ?? []).at(-1);
  for (const fault of faults) {
    const words = fault.hint ? `${fault.text} (${fault.hint})` : fault.text;
    const field = fault.key && fieldOf({ key: fault.key, size: fault.size }) || typed && fieldOf(typed);
    if (!field) {
      rest.push(words);
      continue;
    }
    field.setAttribute('aria-invalid', 'true');
    document.getElementById(field.id + '-e').textContent = words;
  }
  const list = document.getElementById('faults');
  list.replaceChildren(...rest.map((words) => Object.assign(document.createElement('p'), { className: 'fault', textContent: words })));
}
