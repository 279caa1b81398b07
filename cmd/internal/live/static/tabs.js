// What stands below the drawing: cards, lists, sheets, files, the printer.
import { state } from './state.js';
import { ask, say } from './main.js';

let stale = new Set();
let timer = 0;

/** Returns the element of the tab that is open, if the program fills it. */
export function tabWants() { return state.tab === 'printer' ? [] : [state.tab]; }

/** Marks what the tabs show as out of date; the open one follows once the hand rests. */
export function tabChanged() {
  stale = new Set(['cards', 'buying', 'sheets', 'glue', 'figures']);
  clearTimeout(timer);
  timer = setTimeout(fresh, 300);
}

function fresh() {
  if (stale.has(state.tab) && state.text) ask({ done: sheetsShown }, tabWants());
  stale.delete(state.tab);
}

function open(tab) {
  state.tab = tab;
  for (const b of document.querySelectorAll('[role=tab]')) {
    const on = b.dataset.tab === tab;
    b.setAttribute('aria-selected', String(on));
    b.tabIndex = on ? 0 : -1;
    document.getElementById(b.dataset.tab + '-panel').hidden = !on;
  }
  fresh();
}

export function bindTabs(link) {
  const tabs = document.getElementById('tabs');
  tabs.addEventListener('click', (e) => { if (e.target.dataset.tab) open(e.target.dataset.tab); });
  tabs.addEventListener('keydown', (e) => {
    const all = [...tabs.children];
    const to = { ArrowRight: 1, ArrowLeft: -1 }[e.key];
    if (!to) return;
    const b = all[(all.indexOf(e.target) + to + all.length) % all.length];
    b.focus();
    open(b.dataset.tab);
  });
  for (const f of document.querySelectorAll('[data-print]')) {
    f.onchange = () => {
      state.print[f.dataset.print] = f.type === 'checkbox' ? f.checked : f.value;
      stale.add('sheets');
      fresh();
    };
  }
  for (const b of document.querySelectorAll('[data-make]')) b.onclick = () => download(link, b.dataset.make);
  const sheets = document.getElementById('sheets');
  sheets.addEventListener('click', (e) => {
    const b = e.target.closest('[data-sheet]');
    if (!b) return;
    document.getElementById('large-sheet').src = b.firstElementChild.src;
    document.getElementById('large-sheet').alt = b.getAttribute('aria-label');
    document.getElementById('large').showModal();
  });
  seen = new IntersectionObserver((all) => { for (const one of all) if (one.isIntersecting) thumb(link, one.target); }, { rootMargin: '600px' });
  const readings = document.getElementById('readings');
  readings.onsubmit = async (e) => {
    e.preventDefault();
    const words = document.getElementById('printer-words');
    try {
      const answer = await link.printer(Object.fromEntries(new FormData(readings)));
      words.textContent = answer.words;
      const list = document.getElementById('printers');
      list.replaceChildren(list.firstElementChild, ...answer.printers.map((name) => new Option(name)));
    } catch (error) {
      words.textContent = error.message;
    }
  };
  if (!link.printer) readings.hidden = true;
  open(state.tab);
}

let seen;

function sheetsShown() {
  for (const image of document.querySelectorAll('#sheets [data-thumb]')) if (!image.src) seen.observe(image);
}

async function thumb(link, image) {
  seen.unobserve(image);
  const blob = await link.make({ ...request(), kind: 'svg', sheet: Number(image.dataset.thumb) });
  image.src = URL.createObjectURL(new Blob([blob], { type: 'image/svg+xml' }));
  image.onload = () => { image.dataset.shown = 'yes'; };
}

const request = () => ({ text: state.text, name: state.name, print: state.print });

async function download(link, kind) {
  try {
    const blob = await link.make({ ...request(), kind });
    const stem = (state.name || 'piece').replace(/^.*[/\\]/, '').replace(/\.toml$/, '');
    offer(blob, kind === 'scale' ? 'scale.pdf' : `${stem}.${kind}`);
    say('');
  } catch (error) {
    say(error.message);
  }
}

/** Hands a file to the maker. */
export function offer(blob, name) {
  const a = document.createElement('a');
  a.href = URL.createObjectURL(blob);
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}
