// A page without a design: a few questions, or an example.
import { state } from './state.js';
import { ask, show } from './main.js';

const $ = (id) => document.getElementById(id);

export function showStart() {
  $('start').hidden = false;
  $('work').hidden = $('below').hidden = true;
  document.documentElement.dataset.ready = 'yes';
}

export function bindStart() {
  $('anew').onclick = showStart;
  $('questions').onsubmit = (e) => {
    e.preventDefault();
    const answers = Object.fromEntries(new FormData(e.target));
    ask({
      begin: { ...answers, legs: Number(answers.legs) },
      done: (a) => {
        $('start-fault').textContent = (a.faults ?? []).map((f) => f.text).join('; ');
        if (!a.faults?.length) show(a.text, state.name);
      },
    });
  };
  for (const b of document.querySelectorAll('[data-kind]')) {
    if (b.type !== 'button') continue;
    b.onclick = () => {
      const units = new FormData($('questions')).get('units');
      ask({ begin: { kind: b.dataset.kind, units }, done: (a) => show(a.text, '') });
    };
  }
  for (const b of document.querySelectorAll('[data-example]')) {
    b.onclick = () => ask({ example: b.dataset.example, done: (a) => show(a.text, '') });
  }
}
