// The program itself, built for the browser, kept running beside the page.
importScripts('../engine/wasm_exec.js');
const ready = (async () => {
  const go = new Go();
  go.argv = ['rodsheet', 'engine'];
  const started = await WebAssembly.instantiateStreaming(fetch('../engine/engine.wasm'), go.importObject);
  const up = new Promise((done) => { self.rodsheetReady = done; });
  go.run(started.instance);
  await up;
})();
self.onmessage = async ({ data }) => {
  try {
    await ready;
    const value = await self.rodsheet(data.kind, data.request);
    self.postMessage({ number: data.number, value });
  } catch (error) {
    self.postMessage({ number: data.number, error: String(error.message ?? error) });
  }
};
