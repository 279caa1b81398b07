// The drawing: turned, taken apart, its handles dragged, its figures leading to their fields.
import { state } from './state.js';
import { ask } from './main.js';
import { fieldOf } from './swap.js';

export function bindDrawing() {
  const corner = document.getElementById('corner');
  turning(corner);
  for (const id of ['front', 'plan']) dragging(document.getElementById(id));
  document.getElementById('apart').oninput = (e) => { state.look.apart = Number(e.target.value); ask({}, ['corner']); };
  document.getElementById('close').onchange = (e) => { state.look.close = e.target.checked; ask({}, ['corner']); };
  const drawing = document.getElementById('drawing');
  const name = (e) => {
    const part = e.target.closest?.('.part');
    if (part) document.getElementById('named').textContent = part.getAttribute('aria-label');
  };
  drawing.addEventListener('pointerover', name);
  drawing.addEventListener('focusin', name);
  const lead = (e) => {
    const figure = e.target.closest('.figure');
    if (!figure || e.type === 'keydown' && e.key !== 'Enter' && e.key !== ' ') return;
    e.preventDefault();
    const field = fieldOf({ key: figure.dataset.key });
    if (!field) return;
    field.closest('details').open = true;
    field.focus();
    field.select?.();
  };
  drawing.addEventListener('click', lead);
  drawing.addEventListener('keydown', lead);
}

function turn(aside, above) {
  state.look.aside = (state.look.aside + aside) % (2 * Math.PI);
  state.look.above = Math.min(1.5, Math.max(0, state.look.above + above));
  ask({}, ['corner']);
}

function turning(corner) {
  let from = null;
  corner.addEventListener('pointerdown', (e) => { from = e; corner.setPointerCapture(e.pointerId); });
  corner.addEventListener('pointermove', (e) => {
    if (!from) return;
    turn((from.clientX - e.clientX) / 150, (e.clientY - from.clientY) / 150);
    from = e;
  });
  for (const end of ['pointerup', 'pointercancel']) corner.addEventListener(end, () => { from = null; });
  corner.addEventListener('keydown', (e) => {
    const way = { ArrowLeft: [0.1, 0], ArrowRight: [-0.1, 0], ArrowUp: [0, 0.1], ArrowDown: [0, -0.1] }[e.key];
    if (!way) return;
    e.preventDefault();
    turn(...way);
  });
}

let gestures = 0;

function dragging(view) {
  let held = null; // the handle, and the way from the screen to the drawing as it was taken
  view.addEventListener('pointerdown', (e) => {
    const grip = e.target.closest('.grip');
    if (!grip) return;
    e.preventDefault();
    gestures += 1;
    held = { id: grip.dataset.grip, gesture: gestures, back: view.querySelector('svg').getScreenCTM().inverse() };
    view.setPointerCapture(e.pointerId);
  });
  view.addEventListener('pointermove', (e) => {
    if (!held) return;
    const at = new DOMPoint(e.clientX, e.clientY).matrixTransform(held.back);
    ask({ drag: { handle: held.id, x: at.x, y: -at.y }, gesture: held.gesture });
  });
  for (const end of ['pointerup', 'pointercancel']) view.addEventListener(end, () => { held = null; });
  view.addEventListener('keydown', (e) => {
    const grip = e.target.closest('.grip');
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[e.key];
    if (!grip || !way) return;
    e.preventDefault();
    const by = e.shiftKey ? 50 : 10;
    ask({ drag: { handle: grip.dataset.grip, x: Number(grip.getAttribute('cx')) + by * way[0], y: -Number(grip.getAttribute('cy')) + by * way[1] } });
  });
}
