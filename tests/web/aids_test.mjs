// What the browser lends: its keyboard, keys and pads, wake lock, the person's tastes, its place on the device.

import assert from 'node:assert/strict';
import test from 'node:test';
import { small, withTablet } from './driver.mjs';

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

test('another tap into a field leaves its text and moves the caret, and holding it offers to paste', () => withTablet(small, async tablet => {
  const field = () => tablet.page.evaluate(() => [document.activeElement.value, document.activeElement.selectionStart]);
  await tablet.tap('Recipes');
  await tablet.tap('search');
  await tablet.cdp.send('Input.insertText', { text: 'wört 12 sedge' });
  await tablet.settle();
  const [left, , width, height] = (await tablet.state()).controls['##search'];
  await tablet.tap('search', 40 / width); // within the first words
  await tablet.settle();
  const [text, caret] = await field();
  assert.equal(text, 'wört 12 sedge');
  assert.ok(caret > 0 && caret < text.length, `the caret is at ${caret}`);
  await tablet.cdp.send('Input.insertText', { text: 'X' });
  await tablet.settle();
  assert.equal((await field())[0], text.slice(0, caret) + 'X' + text.slice(caret));

  // The same by a mouse; later than a second press, which would mark a word.
  await tablet.page.waitForTimeout(700);
  const at = await tablet.place('search');
  await tablet.page.mouse.click(left + 40, at.y);
  await tablet.settle();
  await tablet.page.keyboard.type('Y');
  await tablet.settle();
  assert.match((await field())[0], /^(?=.*X)(?=.*Y).{15}$/);

  await tablet.page.evaluate(() => {
    globalThis.clip = 'lockgate';
    navigator.clipboard.readText = async () => clip;
    navigator.clipboard.writeText = async words => { clip = words; };
  });
  const hold = async () => {
    await tablet.page.waitForTimeout(700);
    await tablet.touch('touchStart', [at]);
    await tablet.page.waitForFunction(() => !document.getElementById('edit').hidden);
    await tablet.touch('touchEnd', []);
    await tablet.settle();
  };
  const press = words => tablet.page.locator(`#edit button:text-is("${words}")`).tap();
  await hold();
  for (const button of await tablet.page.locator('#edit button').all()) {
    const box = await button.boundingBox();
    assert.ok(box.height >= 44 && box.width >= 44 && box.y >= 0 && box.y + box.height <= 600, JSON.stringify(box));
  }
  await press('Mark all');
  await tablet.settle();
  await hold();
  await press('Copy');
  assert.match(await tablet.page.evaluate(() => clip), /X.*sedge/);
  await tablet.page.evaluate(() => { clip = 'lockgate'; });
  await tablet.page.keyboard.press('ControlOrMeta+a');
  await tablet.settle();
  await hold();
  await tablet.page.keyboard.press('ControlOrMeta+a'); // holding it has put the caret there
  await press('Paste');
  await tablet.until('what was pasted', s => Object.keys(s.controls).some(l => l.includes('lockgate-sedge')) &&
    !Object.keys(s.controls).some(l => l.includes('weirfoot-jig')));
  assert.equal((await field())[0], 'lockgate');
  assert.ok(height >= 44);

  // Refused: it is said, and the field keeps its text.
  await tablet.page.evaluate(() => { navigator.clipboard.readText = async () => { throw new DOMException('no', 'NotAllowedError'); }; });
  await hold();
  await press('Paste');
  await tablet.until('a word about it', s => /did not let the text be pasted/.test(s.notice));
  assert.equal((await field())[0], 'lockgate');
}));

test('every field that takes a bare number opens the keypad of numbers, and no other does', () => withTablet(small, async tablet => {
  const numbers = new Map();
  const see = async () => { for (const [label, , , , , , number] of (await tablet.state()).fields) numbers.set(label, number); };
  await tablet.tap('Water');
  await tablet.bring('fall metres');
  await see();
  await tablet.tap('Water');
  await tablet.tap('Orders');
  await tablet.tap('Cost');
  await see();
  await tablet.tap('Days');
  await see();
  await tablet.tap('Orders');
  await tablet.tap('Recipes');
  await see();
  for (const label of ['metres', 'seconds', '##an hour\'s worth', '##packing', '##postage', '##tax share', '##learning rate']) {
    assert.equal(numbers.get(label), true, `${label} of ${[...numbers.keys()]}`);
  }
  for (const label of ['##currency', '##minutes a day', 'from 200 mg', 'a word of its name or its text']) {
    assert.equal(numbers.get(label), false, `${label} of ${[...numbers.keys()]}`);
  }
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
  await tablet.until('a note', s => /may go dark.*low battery/.test(s.notice));
  assert.equal((await tablet.state()).trouble, '', 'a quiet one, and no more');
  // A sitting that ends while the lock is asked for leaves none behind.
  await tablet.page.evaluate(() => {
    navigator.wakeLock.request = () => new Promise(given => {
      globalThis.give = () => given(globalThis.late = { released: false, release() { this.released = true; return Promise.resolve(); } });
    });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await tablet.tap('Recipes');
  await tablet.tap('Sill Dun');
  await tablet.page.evaluate(() => give());
  await tablet.page.waitForFunction(() => late.released && !wrapwright.awake);
}));

test('darkness, contrast, calm and the browser\'s text size are respected, also when they change', () => withTablet(
  { ...small, colorScheme: 'dark', reducedMotion: 'reduce' }, async tablet => {
    const ground = () => tablet.page.evaluate(() => document.documentElement.style.background);
    assert.equal(await ground(), 'rgb(20, 22, 24)');
    const becomes = async colour => {
      await tablet.page.waitForFunction(c => document.documentElement.style.background === c, colour);
      await tablet.settle();
    };
    await tablet.page.emulateMedia({ colorScheme: 'light' }); // the sun comes up
    await becomes('rgb(180, 178, 171)');
    await tablet.page.emulateMedia({ contrast: 'more' });
    await tablet.page.waitForFunction(() => document.documentElement.style.background !== 'rgb(180, 178, 171)');
    await tablet.page.emulateMedia({ contrast: 'no-preference', colorScheme: 'dark' });
    await becomes('rgb(20, 22, 24)');

    // Calm: not even a caret that blinks.
    await tablet.tap('Recipes');
    await tablet.tap('search');
    await tablet.settle();
    await tablet.page.waitForTimeout(500);
    const drawn = () => tablet.page.evaluate(() => wrapwright.frames);
    const from = await drawn();
    await tablet.page.waitForTimeout(2000);
    assert.equal(await drawn(), from);
    await tablet.page.emulateMedia({ reducedMotion: 'no-preference' });
    await tablet.page.waitForTimeout(2000);
    assert.ok(await drawn() >= from + 3, 'it blinks where nothing speaks against it');
    await tablet.page.emulateMedia({ reducedMotion: 'reduce' });
    await tablet.tap('Recipes');
    await tablet.tap('Lay out');

    const before = (await tablet.state()).controls['Settings'];
    await tablet.page.evaluate(() => { document.documentElement.style.fontSize = '24px'; dispatchEvent(new Event('resize')); canvas.style.width = '99.9%'; });
    await tablet.page.waitForFunction(() => canvas.unit === 1.5);
    await tablet.settle();
    const after = (await tablet.state()).controls['Settings'];
    const unit = await tablet.page.evaluate(() => wrapwright.unit());
    assert.ok(after[3] * unit > 1.3 * before[3], `the door grew from ${before[3]} to ${after[3] * unit}`); // its width is its share of the glass
    await tablet.look('text-larger');
  }));

// 2026-11-30: letters of 12 px made buttons 36 px high.
test('a browser with small letters keeps the buttons as large as a finger', () => withTablet(small, async tablet => {
  await tablet.page.addInitScript(() => document.addEventListener('DOMContentLoaded', () => { document.documentElement.style.fontSize = '12px'; }));
  await tablet.load();
  const { controls } = await tablet.state(), unit = await tablet.page.evaluate(() => wrapwright.unit());
  for (const [label, [, , width, height]] of Object.entries(controls)) {
    assert.ok(width * unit >= 43.5 && height * unit >= 43.5, `${label} is ${width * unit} x ${height * unit}`);
  }
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
