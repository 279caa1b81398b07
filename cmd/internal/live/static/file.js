// The file of the design: read, written when asked, watched while the page is open.
import { state, keep, restore } from './state.js';
import { ask, say, show } from './main.js';
import { offer } from './tabs.js';

const $ = (id) => document.getElementById(id);
let link;

/** Returns the design that the page was opened with, or null. */
export async function load(way) {
  link = way;
  const file = await link.file();
  if (!file) return null;
  state.base = file.text;
  state.named = link.served;
  const kept = restore();
  if (link.served && kept?.text && kept.text !== file.text && kept.base === file.text) {
    news('This browser holds changes that were not saved.', { 'show them': () => show(kept.text, file.name), 'leave them': () => {} });
  }
  return file;
}

export function saveState() {
  const unsaved = state.named && state.text !== state.base;
  $('save').disabled = !unsaved;
  if (unsaved) say('not saved yet'); else if (state.named) say('');
}

async function save() {
  if ($('save').disabled) return;
  const sent = state.text;
  try {
    const kept = await link.write({ text: sent, base: state.base });
    if (kept.changed) return changed(kept.text);
    state.base = sent;
    keep();
    saveState();
    say('saved');
  } catch (error) {
    say(error.message);
  }
}

/** Shows that the file reads otherwise than it did. */
function changed(theirs) {
  const base = state.base;
  state.base = theirs;
  if (state.text === base) {
    show(theirs);
    say('the file was changed and read again');
    return;
  }
  news('The file was changed meanwhile, and the page has changes of its own.', {
    'bring both together': () => ask({
      merge: { base, theirs },
      done: (a) => { if (a.clash?.length) news(`Both changed ${a.clash.join(', ')}.`, either(theirs)); else saveState(); },
    }),
    ...either(theirs),
  });
}

const either = (theirs) => ({ 'take the file': () => show(theirs), 'keep the page': () => saveState() });

export function news(words, buttons) {
  $('news-words').textContent = words;
  $('news-buttons').replaceChildren(...Object.entries(buttons).map(([name, act]) => {
    const b = Object.assign(document.createElement('button'), { type: 'button', textContent: name });
    b.onclick = () => { $('news').hidden = true; act(); };
    return b;
  }));
  $('news').hidden = false;
}

export function bindFile(way) {
  link = way;
  $('save').hidden = !link.write;
  $('save').onclick = save;
  document.addEventListener('keydown', (e) => {
    if ((e.ctrlKey || e.metaKey) && e.key.toLowerCase() === 's' && link.write) {
      e.preventDefault();
      save();
    }
  });
  $('take').onclick = () => offer(new Blob([state.text], { type: 'application/toml' }), (state.name || 'piece.toml').replace(/^.*[/\\]/, ''));
  $('give').onchange = async (e) => {
    const [file] = e.target.files;
    if (file) show(await file.text(), file.name);
    e.target.value = '';
  };
  addEventListener('beforeunload', (e) => { if (state.named && state.text !== state.base) e.preventDefault(); });
  if (!link.served) return;
  setInterval(async () => {
    if (document.hidden || !state.named || !$('news').hidden) return;
    try {
      const file = await link.file();
      if (file.text !== state.base) changed(file.text);
    } catch { /* said when it is saved */ }
  }, 1500);
  const page = crypto.randomUUID();
  const here = () => fetch('here', { method: 'POST', body: page });
  here();
  addEventListener('pagehide', () => navigator.sendBeacon('gone', page));
  addEventListener('pageshow', (e) => { if (e.persisted) here(); });
}
