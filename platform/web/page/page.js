// Puts the program into the page: storage first, then the loop. A turn of the loop lets the program
// answer what came, waits until the storage has what it wrote, and only then lets it draw.

import start from './wrapwright-web.js';
import { Awake, say, tick } from './aids.js';
import { Files } from './files.js';
import { listen } from './input.js';
import { Offline } from './offline.js';
import { Outline } from './outline.js';
import { Storage } from './storage.js';
import { TextField } from './text.js';

const canvas = document.getElementById('canvas'), splash = document.getElementById('splash');
const media = query => matchMedia(query).matches;
const tastes = ['(prefers-contrast: more)', '(prefers-color-scheme: dark)', '(prefers-reduced-motion: reduce)'];
const storage = new Storage(), offline = new Offline(storage, note, () => files.waits);
let bench = null, field = null, files = null, outline = null, awake = null, promised = false;
let frames = 0, state = '{}', firstMs = 0;

/// What is shown for a moment, and goes by itself; one after the other. The outline says it to a screen reader.
let noted = Promise.resolve();
function note(words) {
  noted = noted.then(() => {
    bench.ccall('ww_note', null, ['string'], [words]);
    wake();
    return new Promise(done => setTimeout(done, 4000)); // as long as say() of gui/model.h shows it
  });
}

const fatal = words => { document.body.classList.remove('ready'); splash.textContent = words; };

/// The program cannot go on. Where nothing could be kept, what it holds can still be let out.
function stopped(words) {
  ended = true;
  if (!firstMs) offline.rescue();
  if (!storage.broken) return fatal(words + ' Load the page again; nothing that was shown is lost.');
  fatal(words + ' ' + storage.broken + ', so that the library is in this page alone: save it before you load the page again. ');
  const save = document.createElement('button');
  save.textContent = 'Save the library';
  save.onclick = () => files.give('/data/wrapwright.db');
  splash.append(save);
  return undefined;
}
// The browser's text size, beside its zoom, which comes as device pixels. Smaller letters than usual would
// make smaller buttons than a finger hits.
const unit = () => Math.max(1, parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1);

// ---- the loop
let ended = false, due = 0, timer = 0, turning = false, after = [], ticks = 0;

function wake(then) {
  if (ended) return;
  if (typeof then === 'function') after.push(then);
  clearTimeout(timer);
  if (!due && !turning) due = requestAnimationFrame(run);
  else if (turning) again = true;
}
let again = false;

async function kept() {
  if (!storage.due()) return;
  try {
    await storage.keep();
  } catch (error) {
    ticks = 0;
    await refused(error);
  }
}

async function refused(error) {
  const why = storage.looksOn ? 'Another tab has the library now'
    : error.name === 'QuotaExceededError' ? 'The browser has no more room for this page' : 'The browser refused to keep it (' + error.message + ')';
  const rest = ', so what was done last is not kept. ' +
    (storage.looksOn ? 'This one looks on: close the other, then load this one again' : 'Make room, or save the library: Settings, Back up to a file');
  try {
    await storage.goBack();
  } catch (gone) { // what lies in memory is all there is: it stays
    storage.broken ||= why;
    notKept();
    return;
  }
  bench.ccall('ww_refused', null, ['string'], [why + rest]);
  if (!storage.due()) return;
  // A library that was made, or brought up to date, once more: where that is refused too, nothing can be kept.
  await storage.keep().catch(() => {
    storage.broken = why;
    notKept();
  });
}

function notKept() {
  bench.ccall('ww_trouble', null, ['string'], [storage.broken + '. From now on nothing is kept: save the library, Settings, Back up to a file']);
  wake();
}

const run = () => turn().catch(error => {
  console.error(error);
  stopped('Wrapwright has stopped.');
});

async function turn() {
  due = 0;
  turning = true;
  again = false;
  fit();
  const then = after.splice(0); // of what comes in from here on, the next turn takes care
  bench._ww_catch_up();
  for (let tries = 0; storage.due() && tries < 3; ++tries) await kept();
  for (; ticks > 0; --ticks) tick(); // a turn is heard when it is kept
  const sleep = bench._ww_frame();
  turning = false;
  ++frames;
  for (const f of then) f();
  if (sleep < 0) return stopped(sleep < -1 ? 'What was kept cannot be opened again.' : 'The graphics driver gave up.');
  if (!firstMs) { firstMs = performance.now(); document.body.classList.add('ready'); }
  if (sleep === 0 || again || storage.due()) wake();
  else if (sleep < 3600) timer = setTimeout(wake, 1000 * sleep);
  return undefined;
}

function fit() {
  const dots = devicePixelRatio, box = canvas.getBoundingClientRect();
  const width = Math.max(1, Math.round(box.width * dots)), height = Math.max(1, Math.round(box.height * dots));
  if (canvas.width === width && canvas.height === height && canvas.unit === unit() && canvas.dots === dots) return;
  Object.assign(canvas, { width, height, unit: unit(), dots });
  bench._ww_resize(width, height, dots * unit());
}

// ---- what the program asks of the page: see platform/web/page.h
const page = {
  asks: what => [media('(pointer: coarse)'), ...tastes.map(media), !!navigator.mediaDevices?.getUserMedia, storage.looksOn,
    promised][what] ? 1 : 0,
  tick: () => { ++ticks; },
  say: text => say(text, note),
  pick: kind => files.pick(kind),
  give: path => files.give(path),
  copy: text => { navigator.clipboard?.writeText(text).catch(() => {}); },
  field: (label, text, box, number, many) => field.field(label, text, box, number, many, unit()),
  outline: rows => outline.show(rows),
  state: json => { state = json; },
  caret: (from, to) => field.caret(from, to),
  busy: on => offline.set(on),
  stayAwake: on => awake.set(on),
  ground: colour => {
    document.documentElement.style.background = document.body.style.background = colour;
    document.querySelector('meta[name=theme-color]').content = colour;
  },
};

async function main() {
  // What is kept and the program itself come side by side.
  const before = storage.open().then(() => storage.load())
    .catch(error => { storage.broken = 'What is kept cannot be read (' + error.message + ')'; return new Map(); });
  bench = await start({ canvas, page, print: text => console.log(text), printErr: text => console.error(text) });
  storage.mount(bench.FS, await before);
  field = new TextField(canvas, bench, wake, note);
  files = new Files(bench, wake, words => { bench.ccall('ww_trouble', null, ['string'], [words]); wake(); });
  outline = new Outline(control => { bench._ww_press(control); wake(); });
  awake = new Awake(note);
  storage.lost = notKept;
  fit();
  if (!bench._ww_start()) throw new Error('this browser gives no WebGL 2, or what is kept cannot be read. Try a newer browser, or load the page again.');
  if (storage.broken) bench.ccall('ww_trouble', null, ['string'], [storage.broken + '. Save what you make: Settings, Back up to a file']);
  listen(canvas, bench, field, unit, wake);
  new ResizeObserver(() => wake()).observe(canvas);
  const above = () => {
    // Where the keyboard lies over the page, the canvas ends above it; a browser that pushed the page up
    // for it is told that there was no need.
    document.documentElement.style.setProperty('--tall', visualViewport.scale === 1 ? visualViewport.height + 'px' : '100%');
    if (visualViewport.scale === 1 && visualViewport.offsetTop > 0) scrollTo(0, 0);
  };
  for (const kind of ['resize', 'scroll']) globalThis.visualViewport?.addEventListener(kind, above);
  for (const query of ['(resolution: 1dppx)', ...tastes]) {
    matchMedia(query).addEventListener('change', () => { bench._ww_tastes(); wake(); });
  }
  canvas.addEventListener('webglcontextlost', event => {
    event.preventDefault();
    if (storage.broken) stopped('The graphics driver gave up.');
    else location.reload();
  });
  canvas.focus({ preventScroll: true });
  wake(() => offline.start()); // only the first frame says whether a sitting is on
  promised = await storage.stay().catch(() => false);
  bench._ww_tastes();
}

// For tests, and for whoever asks what is going on.
globalThis.wrapwright = {
  get state() { return JSON.parse(state); },
  get frames() { return frames; },
  get firstMs() { return firstMs; },
  get memory() { return bench._ww_memory(); },
  get awake() { return awake.held; },
  get settled() { return !due && !turning && !storage.due(); },
  storage,
  unit,
};
main().catch(error => {
  console.error(error);
  fatal('Wrapwright cannot start here: ' + error.message);
  offline.rescue();
});
