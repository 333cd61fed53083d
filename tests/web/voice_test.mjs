// The bench in words: what a screen reader finds, and what is read aloud.

import assert from 'node:assert/strict';
import test from 'node:test';
import { small, withTablet } from './driver.mjs';

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

test('a control that has the focus keeps it, as the same control, whatever changes around it', () => withTablet(small, async tablet => {
  await tablet.begin();
  const focused = () => tablet.page.evaluate(() => document.activeElement.textContent);
  // From the canvas, whose own keys begin with Tab, to the words and their buttons.
  await tablet.page.keyboard.press('Shift+Tab');
  assert.match(await focused(), /words and buttons/);
  await tablet.page.keyboard.press('Enter');
  for (let i = 0; i < 40 && !(await focused()).startsWith('On:'); ++i) await tablet.page.keyboard.press('Tab');
  for (let i = 0; i < 8; ++i) {
    assert.match(await focused(), /^On:/);
    const { events } = await tablet.state();
    await tablet.page.waitForTimeout(520);
    await tablet.page.keyboard.press('Enter');
    await tablet.until('the next event', s => s.events === events + 1);
    await tablet.settle();
  }
  // A word that comes and goes takes no element of another.
  const count = () => tablet.page.evaluate(() => {
    const element = [...document.querySelectorAll('#outline h2')].find(e => e.textContent === 'Count').nextElementSibling;
    const was = element.mark;
    element.mark = 1;
    return [element.textContent, was];
  });
  const [before] = await count();
  await tablet.page.evaluate(() => [...document.querySelectorAll('#outline button')].find(b => b.textContent === 'Undo').click());
  await tablet.settle();
  assert.match(await focused(), /^On:/);
  const [after, mark] = await count();
  assert.notEqual(after, before);
  assert.equal(mark, 1, 'the words have changed in their own element');
}));

// 2026-11-30: it was told twice, and stayed in the page for good.
test('what is said for a moment is told once to a screen reader, and is gone afterwards', () => withTablet(small, async tablet => {
  const told = () => tablet.page.evaluate(() => [...document.querySelectorAll('[aria-live], [role=status], [role=alert]')]
    .filter(e => e.textContent.includes('may go dark')).length);
  await tablet.page.evaluate(() => { navigator.wakeLock.request = () => Promise.reject(new DOMException('low battery', 'NotAllowedError')); });
  await tablet.begin();
  await tablet.until('a note', s => /may go dark/.test(s.notice));
  assert.equal(await told(), 1);
  await tablet.until('its end', s => !s.notice);
  assert.equal(await told(), 0);
}));

test('a voice of this device reads each step when it is asked to, and none else does', () => withTablet(small, async tablet => {
  await tablet.page.evaluate(() => {
    globalThis.said = [];
    globalThis.cancelled = 0;
    globalThis.voices = [];
    speechSynthesis.getVoices = () => voices;
    speechSynthesis.speak = words => said.push([words.text, words.voice?.name]);
    speechSynthesis.cancel = () => { ++cancelled; };
    globalThis.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  });
  const all = () => tablet.page.evaluate(() => said);
  await tablet.begin();
  await tablet.settle();
  assert.deepEqual(await all(), [], 'off by default');
  await tablet.page.keyboard.press('y');
  await tablet.settle();
  assert.deepEqual(await all(), [], 'the voices are not known yet, and one of elsewhere might answer');
  await tablet.page.evaluate(() => {
    voices = [{ name: 'far', localService: false, lang: 'en-GB' }, { name: 'near', localService: true, lang: 'en-GB' }];
    speechSynthesis.dispatchEvent(new Event('voiceschanged'));
  });
  await tablet.page.waitForFunction(() => said.length === 1);
  const [[text, voice]] = await all();
  assert.equal(voice, 'near');
  const outline = await tablet.page.evaluate(() => document.getElementById('outline').textContent);
  assert.ok(outline.includes(text.split('. ')[0]), text);
  await tablet.page.waitForTimeout(600);
  const before = await tablet.page.evaluate(() => cancelled);
  await tablet.page.keyboard.press('Tab');
  await tablet.page.waitForFunction(() => said.length === 2);
  assert.ok(await tablet.page.evaluate(() => cancelled) > before, 'the step before is read no further');
  // Only voices of elsewhere: nothing is read, and it says so.
  await tablet.page.evaluate(() => { voices = voices.slice(0, 1); });
  await tablet.page.waitForTimeout(600);
  await tablet.page.keyboard.press('Tab');
  await tablet.until('a word about it', s => /no English voice of its own/.test(s.notice));
  assert.equal((await all()).length, 2);
}));
