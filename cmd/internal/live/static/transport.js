// The way to the program: over this machine's own address, or to the engine in a worker.

/** @returns {Promise<{ask: Function, make: Function, file: Function, write: Function, printer: Function, served: boolean}>} */
export async function connect() {
  return document.documentElement.dataset.mode === 'engine' ? engine() : server();
}

function server() {
  const post = async (path, body) => {
    const r = await fetch(path, { method: 'POST', body: JSON.stringify(body) });
    if (!r.ok) throw new Error((await r.text()).trim() || r.statusText);
    return r;
  };
  const json = async (path, body) => (await post(path, body)).json();
  return {
    served: true,
    ask: (r) => json('ask', r),
    make: async (r) => (await post('make', r)).blob(),
    write: (k) => json('file', k),
    printer: (r) => json('printer', r),
    file: async () => {
      const r = await fetch('file');
      if (!r.ok) throw new Error((await r.text()).trim());
      return r.json();
    },
  };
}

function engine() {
  const worker = new Worker('static/worker.js');
  const open = new Map();
  let last = 0;
  worker.onmessage = ({ data }) => {
    const [done, fail] = open.get(data.number);
    open.delete(data.number);
    if (data.error) fail(new Error(data.error)); else done(data.value);
  };
  const call = (kind, request) => new Promise((done, fail) => {
    last += 1;
    open.set(last, [done, fail]);
    worker.postMessage({ number: last, kind, request: JSON.stringify(request) });
  });
  return {
    served: false,
    ask: async (r) => JSON.parse(await call('ask', r)),
    make: async (r) => new Blob([await call('make', r)]),
    file: async () => ({ text: await (await fetch('design.toml')).text(), name: '' }),
    write: null,
    printer: null,
  };
}
