// The page's own copy on the device, and new versions of it, which land in no sitting.

import assert from 'node:assert/strict';
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { Tablet, folder, serve, small, withTablet } from './driver.mjs';

/// A tablet whose server gives out a newer version once publish() was called.
async function withVersions(work) {
  const copy = mkdtempSync(path.join(tmpdir(), 'wrapwright-version-'));
  cpSync(folder, copy, { recursive: true });
  const server = await serve(copy), tablet = new Tablet(server.address, small);
  const versions = () => tablet.page.evaluate(async () => (await caches.keys()).filter(name => name.startsWith('wrapwright-')).sort());
  const next = 'wrapwright-' + 'f'.repeat(16);
  const publish = async () => {
    const [old] = await versions(), worker = path.join(copy, 'sw.js');
    assert.match(old, /^wrapwright-[0-9a-f]{16}$/, 'named after its bytes, or no browser sees that there is a newer one');
    writeFileSync(worker, readFileSync(worker, 'utf8').replace(old, next));
    appendFileSync(path.join(copy, 'style.css'), '/* newer */');
    appendFileSync(path.join(copy, 'index.html'), '<!-- newer -->');
    appendFileSync(path.join(copy, 'page.js'), 'globalThis.isNewer = true; if (document.lastChild.data !== " newer ") localStorage.mixed = 1;');
    await tablet.page.evaluate(async () => {
      const worker = await navigator.serviceWorker.getRegistration();
      await worker.update();
      while (!worker.waiting) await new Promise(done => setTimeout(done, 50));
    });
    assert.deepEqual(await versions(), [old, next].sort(), 'both lie there whole');
    return old;
  };
  try {
    await tablet.open();
    await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
    await work({ tablet, versions, publish, next });
    assert.equal(await tablet.page.evaluate(() => localStorage.mixed), undefined, 'no page has files of two versions');
    tablet.clean();
  } finally {
    await tablet.close();
    await server.stop();
    rmSync(copy, { recursive: true });
  }
}

const hide = page => page.evaluate(() => {
  Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'hidden' });
  document.dispatchEvent(new Event('visibilitychange'));
});

/// The style and the page's own script, as they are given out and as they run.
const isNewer = page => page.evaluate(async () => [(await (await fetch('style.css')).text()).includes('newer'), !!globalThis.isNewer]);

/// Ends the sitting by another recipe, which loads the page anew at once because nobody looks.
async function endUnseen(tablet) {
  await tablet.tap('Recipes');
  const at = await tablet.place('Sill Dun'), loaded = tablet.page.waitForEvent('load');
  await tablet.touch('touchStart', [at]);
  await tablet.touch('touchEnd', []);
  await loaded;
  await tablet.ready();
}

test('a new version comes whole, and waits while a sitting is on', () => withVersions(async ({ tablet, versions, publish, next }) => {
  await tablet.begin();
  const old = await publish();
  await hide(tablet.page);
  await tablet.page.waitForTimeout(500);
  assert.ok((await versions()).includes(old), 'not in the middle of a sitting');
  assert.deepEqual(await isNewer(tablet.page), [false, false]);
  await endUnseen(tablet);
  assert.deepEqual(await versions(), [next]);
  assert.deepEqual(await isNewer(tablet.page), [true, true]);
}));

test('a new version waits while words are typed that nothing keeps yet, and while a file is chosen', () => withVersions(async ({ tablet, publish }) => {
  await publish();
  await tablet.tap('Water');
  await tablet.bring('fall metres');
  await tablet.tap('fall metres');
  await tablet.until('the field', s => s.fields.some(([label, , , , , active]) => active && label === 'metres'));
  await tablet.cdp.send('Input.insertText', { text: '1' });
  await tablet.settle();
  await hide(tablet.page);
  await tablet.page.waitForTimeout(500);
  assert.deepEqual(await isNewer(tablet.page), [false, false]);

  await tablet.page.evaluate(() => { HTMLInputElement.prototype.click = function click() { globalThis.chooser = this; }; });
  await tablet.tap('Check');
  await tablet.tap('Photo');
  await tablet.tap('Choose a photo');
  await tablet.tap('Water');
  await tablet.bring('fall metres');
  await tablet.tap('fall metres');
  await tablet.until('the field', s => s.fields.some(([label, , , , , active]) => active && label === 'metres'));
  await tablet.page.keyboard.press('Backspace');
  await tablet.settle();
  await tablet.page.keyboard.press('Enter'); // out of the field, which is empty now
  await tablet.settle();
  await tablet.page.waitForTimeout(500);
  assert.deepEqual(await isNewer(tablet.page), [false, false]);
  const loaded = tablet.page.waitForEvent('load');
  await tablet.page.evaluate(() => {
    chooser.dispatchEvent(new Event('cancel'));
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await loaded;
  await tablet.ready();
  assert.deepEqual(await isNewer(tablet.page), [true, true]);
}));

// 2026-11-30: a killed browser started the waiting worker by itself, and the fly went on in another version.
test('a new version lands in no sitting that a killed browser had open', () => withVersions(async ({ tablet, versions, publish, next }) => {
  await tablet.begin();
  const old = await publish();
  const { events, at } = await tablet.state();
  for (const way of ['kill', 'leave', 'kill']) {
    await tablet[way]();
    await tablet.open();
    assert.deepEqual(await isNewer(tablet.page), [false, false], `the version of the sitting, after ${way}`);
    const state = await tablet.state();
    assert.deepEqual([state.events, state.at], [events, at]);
    assert.ok((await versions()).includes(old));
    await hide(tablet.page);
    await tablet.page.waitForTimeout(500);
    assert.deepEqual(await isNewer(tablet.page), [false, false], 'nor when it is put away');
  }
  assert.equal(await tablet.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).waiting), null, 'the browser has started the new worker');
  await endUnseen(tablet);
  assert.deepEqual(await versions(), [next]);
  assert.deepEqual(await isNewer(tablet.page), [true, true]);
}));

test('a new version that waits takes over at the start of the next visit, whole, when no sitting is on', () => withVersions(async ({ tablet, versions, publish, next }) => {
  await publish();
  await tablet.page.reload();
  // The old one once more, which asks, and goes away while it is looked at.
  await tablet.page.waitForFunction(() => globalThis.isNewer && globalThis.wrapwright?.firstMs > 0);
  assert.deepEqual(await isNewer(tablet.page), [true, true]);
  assert.deepEqual(await versions(), [next]);
}));

test('a version that cannot start gives way to a newer one', () => withVersions(async ({ tablet, versions, publish, next }) => {
  await publish();
  await tablet.page.addInitScript(() => { HTMLCanvasElement.prototype.getContext = () => null; });
  await tablet.page.reload();
  await tablet.page.waitForFunction(() => globalThis.isNewer, null, { timeout: 20000 });
  assert.deepEqual(await isNewer(tablet.page), [true, true]);
  assert.deepEqual(await versions(), [next]);
  tablet.complaints.length = 0; // that there is no WebGL
}));

test('a new version lands in no tab that is in a sitting, whichever tab is put away', () => withTablet(small, async tablet => {
  await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
  const second = await tablet.context.newPage(); // opened before the sitting, so that it knows of none
  await second.goto(tablet.address);
  await second.waitForFunction(() => globalThis.wrapwright?.firstMs > 0);
  await tablet.page.bringToFront();
  await tablet.begin();
  await tablet.page.evaluate(() => { globalThis.same = true; });
  const change = page => page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'hidden' });
    navigator.serviceWorker.dispatchEvent(new MessageEvent('message', { data: 'newer' }));
  });
  const anew = second.waitForEvent('load');
  await change(second);
  await anew; // nobody looks at it, and it has no sitting
  await change(tablet.page);
  await tablet.page.waitForTimeout(500);
  assert.equal(await tablet.page.evaluate(() => globalThis.same), true);
  await second.close();
}));

const lacks = /^Without a network this page does not open: /;

/// Loads the page; what it says for a moment about its copy, if anything.
async function toldOf(tablet) {
  await tablet.load();
  await tablet.page.waitForTimeout(1500);
  const { notice, trouble } = await tablet.state();
  assert.equal(trouble, '', 'it is said softly');
  return lacks.test(notice) ? notice.replace(lacks, '') : '';
}

// 2026-11-30: nothing was said, and the bench did not open where there was no network.
test('whoever has no copy for where there is no network is told why, and the next load tries again', async () => {
  const copy = mkdtempSync(path.join(tmpdir(), 'wrapwright-lacking-'));
  cpSync(folder, copy, { recursive: true });
  const server = await serve(copy), tablet = new Tablet(server.address, small);
  try {
    tablet.load = async () => {};
    await tablet.open();
    delete tablet.load;
    await tablet.page.addInitScript(() => {
      const { register } = ServiceWorkerContainer.prototype;
      ServiceWorkerContainer.prototype.register = function (...what) {
        return localStorage.refused ? Promise.reject(new DOMException('no cookies', 'SecurityError')) : register.apply(this, what);
      };
    });
    rmSync(path.join(copy, 'icon-512.png')); // a file that does not come, as one that has no room
    assert.match(await toldOf(tablet), /^not all of it could be kept\. Make room/);
    assert.deepEqual(await tablet.page.evaluate(() => caches.keys()), [], 'a part of it is not kept');
    await tablet.page.evaluate(() => { localStorage.refused = 1; });
    assert.match(await toldOf(tablet), /no cookies.*Allow it to store data/);
    await tablet.page.evaluate(() => { localStorage.clear(); });
    cpSync(path.join(folder, 'icon-512.png'), path.join(copy, 'icon-512.png'));
    assert.equal(await toldOf(tablet), '', 'where all is well nothing is said');
    await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
    await server.stop();
    assert.equal(await toldOf(tablet), '', 'nor where the copy is in use');
  } finally {
    await tablet.close();
    await server.stop();
    rmSync(copy, { recursive: true });
  }
});

test('a page that does not come by https says that it keeps no copy', async () => {
  const server = await serve();
  const tablet = new Tablet(server.address.replace('127.0.0.1', 'bench.test'), small, { args: ['--host-resolver-rules=MAP bench.test 127.0.0.1'] });
  try {
    tablet.load = async () => {};
    await tablet.open();
    delete tablet.load;
    assert.match(await toldOf(tablet), /by https, or from localhost/);
  } finally {
    await tablet.close();
    await server.stop();
  }
});
