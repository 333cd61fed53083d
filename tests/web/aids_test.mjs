// What the browser lends: its keyboard, dialogs, camera, wake lock, voice, its ear for screen readers.

import assert from 'node:assert/strict';
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import test from 'node:test';
import { Tablet, folder, root, serve, small, withTablet } from './driver.mjs';

test('a field opens the keyboard within the tap, and takes accents, compositions and pasted text', () => withTablet(small, async tablet => {
  const focused = () => tablet.page.evaluate(() => document.activeElement.id);
  const value = () => tablet.page.evaluate(() => document.activeElement.value);
  await tablet.tap('Recipes');
  assert.equal(await focused(), 'canvas', 'a list alone opens no keyboard');
  // Focus that comes later than the gesture opens no keyboard on a tablet.
  await tablet.page.evaluate(() => {
    globalThis.inGesture = null;
    canvas.addEventListener('touchend', () => { globalThis.inGesture = document.activeElement.id; });
  });
  await tablet.tap('search');
  assert.equal(await tablet.page.evaluate(() => inGesture), 'line');
  await tablet.cdp.send('Input.insertText', { text: 'jig' });
  await tablet.settle();
  const rows = await tablet.until('fewer recipes', s => Object.keys(s.controls).filter(l => l.indexOf('##') > 0).length < 5);
  assert.ok(Object.keys(rows.controls).some(l => l.includes('weirfoot-jig')));
  await tablet.cdp.send('Input.imeSetComposition', { text: ' wö', selectionStart: 3, selectionEnd: 3 });
  await tablet.settle();
  assert.equal(await value(), 'jig wö');
  await tablet.cdp.send('Input.insertText', { text: ' wört' });
  await tablet.page.keyboard.press('ControlOrMeta+a');
  await tablet.page.keyboard.press('Backspace');
  await tablet.cdp.send('Input.insertText', { text: 'sedge' });
  await tablet.settle();
  await tablet.look('keyboard');
  const found = await tablet.until('the sedge', s => Object.keys(s.controls).some(l => l.includes('lockgate-sedge')));
  assert.ok(!Object.keys(found.controls).some(l => l.includes('weirfoot-jig')));
  await tablet.page.keyboard.press('Enter');
  await tablet.until('the sedge is open', s => s.recipe === 'lockgate-sedge');
  await tablet.settle();
  assert.equal(await focused(), 'canvas');

  // A number asks for the keypad of numbers.
  await tablet.tap('Water');
  await tablet.bring('fall metres');
  await tablet.tap('fall metres');
  assert.equal(await tablet.page.evaluate(() => document.activeElement.inputMode), 'decimal');
}));

test('recipes, photos and backups go out and come in by the browser\'s dialogs and by drop', () => withTablet(small, async tablet => {
  await tablet.tap('Recipes');
  let saving = tablet.page.waitForEvent('download');
  await tablet.tap('Save to a file');
  let file = await saving;
  const recipe = JSON.parse(readFileSync(await file.path(), 'utf8'));
  assert.equal(file.suggestedFilename(), recipe.id + '.json');

  // The same under another name comes in by the dialog, and its own bytes lie in the library.
  recipe.id = 'from-a-friend';
  recipe.name = 'Weir Loan';
  const lent = path.join(tablet.data, 'lent.json');
  writeFileSync(lent, JSON.stringify(recipe));
  let choosing = tablet.page.waitForEvent('filechooser');
  await tablet.tap('Open a file');
  await (await choosing).setFiles(lent);
  await tablet.until('it is open', s => s.recipe === 'from-a-friend');

  recipe.id = 'dropped';
  const drop = text => tablet.page.evaluate(([name, words]) => {
    const data = new DataTransfer();
    data.items.add(new File([words], name));
    canvas.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true }));
  }, text);
  await drop(['dropped.json', JSON.stringify(recipe)]);
  await tablet.until('it is open', s => s.recipe === 'dropped');
  await drop(['broken.json', '{ "id": ']);
  assert.match((await tablet.until('a word about it', s => s.trouble)).trouble, /broken\.json/);
  await tablet.tap('Put away');
  await drop(['letter.pdf', 'no picture']);
  assert.match((await tablet.until('a word about it', s => s.trouble)).trouble, /PNG or a JPEG/);
  await tablet.tap('Put away');
  assert.equal((await tablet.state()).recipe, 'dropped');

  await tablet.tap('Check');
  await tablet.tap('Photo');
  choosing = tablet.page.waitForEvent('filechooser');
  await tablet.tap('Choose a photo');
  await (await choosing).setFiles(path.join(root, 'assets/picture.png'));
  await tablet.until('the photo', s => s.photo);
  await tablet.look('photo');
  await tablet.page.reload();
  await tablet.ready();
}));

test('the camera takes the photo, with a frame that shows how to hold it', () => withTablet(small, async tablet => {
  await tablet.tap('Check');
  await tablet.tap('Photo');
  await tablet.tap('Take a photo');
  await tablet.page.waitForFunction(() => !document.getElementById('camera').hidden && seen.videoWidth > 0);
  await tablet.page.screenshot({ path: path.join(root, 'build/shots/web/camera.png') }).catch(() => {});
  await tablet.page.locator('#shoot').tap();
  await tablet.until('the photo', s => s.photo);
  assert.equal(await tablet.page.evaluate(() => seen.srcObject), null, 'the camera is off again');
}, { permissions: ['camera'], args: ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'] }));

test('without a camera a file is asked for', () => withTablet(small, async tablet => {
  await tablet.page.evaluate(() => { navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('Permission denied', 'NotAllowedError')); });
  await tablet.tap('Check');
  await tablet.tap('Photo');
  const choosing = tablet.page.waitForEvent('filechooser');
  await tablet.tap('Take a photo');
  await (await choosing).setFiles(path.join(root, 'assets/picture.png'));
  await tablet.until('the photo', s => s.photo);
}));

test('the screen stays lit in a sitting, is asked again on return, and a refusal is told softly', () => withTablet(small, async tablet => {
  await tablet.page.evaluate(() => {
    globalThis.asked = 0;
    globalThis.grant = true;
    navigator.wakeLock.request = async () => {
      ++globalThis.asked;
      if (!globalThis.grant) throw new DOMException('low battery', 'NotAllowedError');
      return globalThis.lock = { released: false, release() { this.released = true; return Promise.resolve(); } };
    };
  });
  assert.equal(await tablet.page.evaluate(() => wrapwright.awake), false);
  await tablet.begin();
  await tablet.page.waitForFunction(() => wrapwright.awake);
  // Away and back: the browser has let it go, and is asked again; this time it refuses.
  await tablet.page.evaluate(() => {
    globalThis.grant = false;
    globalThis.lock.released = true;
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await tablet.page.waitForFunction(() => /may go dark.*low battery/.test(document.getElementById('told').textContent));
  assert.equal((await tablet.state()).trouble, '', 'a quiet note, and no more');
}));

test('a screen reader can follow the whole step', () => withTablet(small, async tablet => {
  const rows = () => tablet.page.evaluate(() => [...document.getElementById('outline').children].map(e => [e.tagName, e.textContent]));
  await tablet.begin();
  const outline = await rows();
  const heads = outline.filter(([tag]) => tag === 'H1' || tag === 'H2').map(([, text]) => text);
  assert.equal(outline[0][0], 'H1');
  assert.match(heads[0], /hook size/);
  assert.match(heads[1], /Step 1 of/);
  assert.ok(heads.includes('Tally') && heads.includes('What can be done'), heads.join('; '));
  const buttons = outline.filter(([tag]) => tag === 'BUTTON').map(([, text]) => text);
  for (const wanted of ['Back', 'Undo', 'Thread broke', 'Settings']) assert.ok(buttons.includes(wanted), `${wanted}: ${buttons}`);

  // As an assistive technology sees it, and by its own press.
  const seen = await tablet.page.locator('#outline').ariaSnapshot();
  assert.match(seen, /heading .*\[level=1\]/);
  assert.match(seen, /button "On: the next action, or one more turn"/);
  await tablet.page.waitForTimeout(600);
  await tablet.page.evaluate(() => [...document.querySelectorAll('#outline button')].find(b => b.textContent.startsWith('On')).click());
  await tablet.until('the next', s => s.events === 2);
  await tablet.settle();
  assert.notDeepEqual(await rows(), outline, 'the outline follows');

  // The counter is read by itself: a live text of its own.
  for (let i = 0; i < 40 && !(await rows()).some(([, text]) => text === 'Count'); ++i) {
    await tablet.page.waitForTimeout(520);
    const { at, events } = await tablet.state();
    await tablet.page.keyboard.press('Tab');
    await tablet.until('the next', s => s.at > at || s.events > events);
    await tablet.settle();
  }
  const live = await tablet.page.evaluate(() => [...document.querySelectorAll('#outline [aria-live]')].map(e => e.textContent));
  assert.ok(live.some(text => /^\d+ of \d+ turns, \d+ left$/.test(text)), live.join('; '));
}));

test('contrast, darkness, calm and the browser\'s text size are respected', () => withTablet(
  { ...small, colorScheme: 'dark', reducedMotion: 'reduce', contrast: 'more' }, async tablet => {
    assert.equal(await tablet.page.evaluate(() => document.documentElement.style.background), 'rgb(20, 22, 24)');
    const before = (await tablet.state()).controls['Settings'];
    await tablet.page.addStyleTag({ content: '' }).catch(() => {});
    await tablet.page.evaluate(() => { document.documentElement.style.fontSize = '24px'; dispatchEvent(new Event('resize')); canvas.style.width = '99.9%'; });
    await tablet.page.waitForFunction(() => canvas.unit === 1.5);
    await tablet.settle();
    const after = (await tablet.state()).controls['Settings'];
    const unit = await tablet.page.evaluate(() => wrapwright.unit());
    assert.ok(after[3] * unit > 1.3 * before[3], `the door grew from ${before[3]} to ${after[3] * unit}`); // its width is its share of the glass
    await tablet.look('text-larger');
    tablet.complaints = tablet.complaints.filter(c => !c.includes('Content Security Policy')); // of addStyleTag
  }));

test('keys and a pad work as on the desktop', () => withTablet(small, async tablet => {
  await tablet.page.evaluate(() => {
    globalThis.pad = { buttons: Array.from({ length: 16 }, () => ({ pressed: false })) };
    navigator.getGamepads = () => [globalThis.pad];
    dispatchEvent(new Event('gamepadconnected'));
  });
  await tablet.begin();
  await tablet.page.waitForTimeout(600);
  await tablet.page.keyboard.press('Space');
  await tablet.until('a key', s => s.events === 2);
  await tablet.page.waitForTimeout(600);
  await tablet.page.evaluate(() => { pad.buttons[0].pressed = true; });
  await tablet.until('the pad', s => s.events === 3);
  await tablet.page.evaluate(() => { pad.buttons[0].pressed = false; });
  await tablet.page.keyboard.press('u');
  await tablet.until('undo', s => s.events === 4);
}));

test('it can be installed, and asks nobody for anything', () => withTablet(small, async tablet => {
  await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
  const { installabilityErrors } = await tablet.cdp.send('Page.getInstallabilityErrors');
  assert.deepEqual(installabilityErrors.filter(e => e.errorId !== 'in-incognito'), []);
  const policy = await tablet.page.evaluate(() => document.querySelector('meta[http-equiv]').content);
  assert.match(policy, /default-src 'none'/);
  assert.doesNotMatch(policy, /'unsafe-inline'|'unsafe-eval'/);
  // The policy holds: nobody else can be asked, and no text becomes a program.
  // By a timer, because what a debugger runs itself is let off.
  const refused = await tablet.page.evaluate(() => Promise.all([
    fetch('https://example.invalid/').then(() => 'asked', () => 'refused'),
    new Promise(told => setTimeout(() => { try { told(new Function('return 1')()); } catch { told('refused'); } }, 0))]));
  assert.deepEqual(refused, ['refused', 'refused']);
  tablet.complaints = [];
  tablet.foreign = [];
}));

test('a new version comes whole, and waits while a sitting is on', async () => {
  const copy = mkdtempSync(path.join(tmpdir(), 'wrapwright-version-'));
  cpSync(folder, copy, { recursive: true });
  const server = await serve(copy), tablet = new Tablet(server.address, small);
  const caches_ = () => tablet.page.evaluate(() => caches.keys());
  const hide = () => tablet.page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'hidden' });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  try {
    await tablet.open();
    await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
    await tablet.begin();
    const [old] = await caches_();
    const next = 'wrapwright-' + 'f'.repeat(16), worker = path.join(copy, 'sw.js');
    writeFileSync(worker, readFileSync(worker, 'utf8').replace(old, next));
    appendFileSync(path.join(copy, 'style.css'), '/* newer */');
    await tablet.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
    await tablet.page.waitForFunction(async () => (await navigator.serviceWorker.getRegistration()).waiting);
    assert.deepEqual((await caches_()).sort(), [old, next].sort(), 'both lie there whole');
    await hide();
    await tablet.page.waitForTimeout(500);
    assert.ok((await caches_()).includes(old), 'not in the middle of a sitting');
    assert.ok(!(await tablet.page.evaluate(async () => (await fetch('style.css')).text())).includes('newer'));

    await tablet.tap('Recipes');
    const loaded = tablet.page.waitForEvent('load'); // at once, because the sitting ends while nobody looks
    await Promise.all([tablet.tap('Sill Dun').catch(() => { /* the page goes away under the finger */ }), loaded]);
    await tablet.ready();
    assert.deepEqual(await caches_(), [next]);
    assert.ok((await tablet.page.evaluate(async () => (await fetch('style.css')).text())).includes('newer'));
    tablet.clean();
  } finally {
    await tablet.close();
    await server.stop();
    rmSync(copy, { recursive: true });
  }
});
