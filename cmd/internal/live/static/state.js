// What the page holds. The design is its text; everything else is how it is looked at.
export const state = {
  text: '', name: '', base: '', size: '', own: '', tab: 'cards',
  look: { aside: 0.5, above: 0.5, apart: 0, close: false },
  print: {}, pending: [],
};

const place = 'rodsheet ' + location.pathname.replace(/[0-9a-f]{32}/, '') + document.documentElement.dataset.name;

/** Keeps the last state in this browser, so that a closed page loses nothing. */
export function keep() {
  try {
    localStorage.setItem(place, JSON.stringify({ text: state.text, name: state.name, base: state.base }));
  } catch { /* a browser that keeps nothing: the file is the place to save to */ }
}

/** Returns what was kept, or null. */
export function restore() {
  try {
    return JSON.parse(localStorage.getItem(place));
  } catch {
    return null;
  }
}
