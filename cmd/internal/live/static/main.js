// The page: what the maker does becomes a request, and what the answer holds is put in
// its place. All figures, sentences and drawings come from the program.
import { state, keep, restore } from './state.js';
import { connect } from './transport.js';
import { swap, showFaults } from './swap.js';
import { step, bindHistory } from './history.js';
import { bindForm } from './form.js';
import { bindDrawing } from './drawing.js';
import { bindTabs, tabWants, tabChanged } from './tabs.js';
import { bindFile, load, saveState } from './file.js';
import { bindStart, showStart } from './start.js';

const views = ['form', 'plan', 'front', 'corner', 'checks'];
const link = await connect();
let busy = false;
let waiting = null;

/** Sends a request, or lays it over the one that waits while another is on its way. */
export function ask(request = {}, want = views) {
  waiting = joined(waiting, request, want);
  if (!busy) next();
}

function joined(old, request, want) {
  if (!old) return { request: { ...request }, want: new Set(want) };
  const changes = [...(old.request.changes ?? [])];
  for (const c of request.changes ?? []) {
    const at = changes.findIndex((o) => o.key === c.key && o.size === c.size && o.row === c.row);
    if (at >= 0) changes.splice(at, 1);
    changes.push(c);
  }
  return { request: { ...old.request, ...request, changes }, want: new Set([...old.want, ...want]) };
}

async function next() {
  const { request, want } = waiting;
  waiting = null;
  busy = true;
  document.body.classList.add('busy');
  const changes = [...state.pending.filter((p) => !(request.changes ?? []).some((c) => same(c, p))), ...(request.changes ?? [])];
  const sent = { text: state.text, size: state.size };
  try {
    const answer = await link.ask({
      text: state.text, name: state.name, size: state.size, own: state.own, look: state.look, print: state.print,
      ...request, changes: request.changes ? changes : [], want: [...want],
    });
    if (sent.size !== state.size) answer.size = state.size;
    if (sent.text === state.text) take(answer, request);
  } catch (error) {
    say(error.message);
  }
  busy = false;
  document.body.classList.toggle('busy', waiting !== null);
  if (waiting) next();
}

const same = (a, b) => a.key === b.key && a.size === b.size && a.row === b.row;

function take(answer, request) {
  state.pending = answer.pending ?? [];
  if (answer.text !== state.text) {
    step(state.text, request);
    state.text = answer.text;
    keep();
    tabChanged();
    saveState();
  }
  state.size = answer.size;
  if (answer.title) document.title = document.getElementById('title').textContent = answer.title;
  swap(answer.swap ?? {});
  showFaults(answer.faults ?? [], request);
  showSizes();
  document.documentElement.dataset.ready = 'yes';
  if (request.done) request.done(answer);
}

export function say(words) { document.getElementById('status').textContent = words; }

/** Shows another text: from undo, a file, an example. */
export function show(text, name = state.name) {
  Object.assign(state, { text, name, pending: [] });
  document.getElementById('start').hidden = true;
  document.getElementById('work').hidden = document.getElementById('below').hidden = false;
  keep();
  tabChanged();
  saveState();
  ask({}, [...views, ...tabWants()]);
}

function showSizes() {
  const names = [...document.querySelectorAll('#form [data-own]')].map((b) => b.dataset.own).filter(Boolean);
  document.getElementById('sizes').replaceChildren(...names.map((name) => {
    const b = document.createElement('button');
    b.type = 'button';
    b.textContent = name;
    b.setAttribute('aria-pressed', String(name === state.size));
    b.onclick = () => { state.size = name; keep(); tabChanged(); ask({}, views.slice(1)); };
    return b;
  }));
}

bindHistory(show);
bindForm();
bindDrawing();
bindTabs(link);
bindFile(link);
bindStart(link);
const found = await load(link) ?? restore();
if (found?.text) show(found.text, found.name); else showStart();
