// The form of the design, and the mends of its checks.
import { state } from './state.js';
import { ask } from './main.js';

export function bindForm() {
  const form = document.getElementById('form');
  form.addEventListener('input', (e) => {
    const f = e.target;
    if (!f.dataset.key) return;
    ask({ changes: [{ size: f.dataset.size ?? '', key: f.dataset.key, row: Number(f.dataset.row ?? 0), value: f.value.trim() }] });
  });
  form.addEventListener('click', (e) => {
    const b = e.target.closest('button');
    if (!b) return;
    if (b.dataset.own !== undefined) {
      state.own = b.dataset.own;
      if (state.own) state.size = state.own;
      ask();
    } else if (b.dataset.addSize !== undefined) {
      const name = prompt('Name of the size');
      if (name) ask({ resize: { add: name } });
    } else if (b.dataset.removeSize) {
      state.own = '';
      ask({ resize: { remove: b.dataset.removeSize } });
    } else if (b.dataset.removeRow) {
      ask({ resize: { table: b.dataset.table, row: Number(b.dataset.removeRow) } });
    }
  });
  document.getElementById('checks').addEventListener('click', (e) => {
    const b = e.target.closest('[data-check]');
    if (b) ask({ fix: { size: b.dataset.of, together: b.dataset.together === 'true', check: b.dataset.check, index: Number(b.dataset.index) } });
  });
}
