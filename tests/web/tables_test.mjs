// The tables of stock and orders under fingers: written into with one tap, pushed both ways, read from
// and written to files by the browser's dialogs.

import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { small, upright, withTablet } from './driver.mjs';

const inFocus = tablet => tablet.page.evaluate(() => [document.activeElement.id, document.activeElement.inputMode]);

/// Taps the middle of a cell of that column in a row that is in sight.
async function tapCell(tablet, label, row = 0) {
  const state = await tablet.until(`cells of ${label}`, s => s.fields.filter(([name]) => name === label).length > row);
  const [, x, y, width, height] = state.fields.filter(([name]) => name === label)[row];
  const unit = await tablet.page.evaluate(() => wrapwright.unit());
  const at = { x: (x + 0.5 * width) * unit, y: (y + 0.5 * height) * unit };
  await tablet.touch('touchStart', [at]);
  await tablet.touch('touchEnd', []);
  await tablet.settle();
}

async function write(tablet, text) {
  await tablet.until('a field', s => s.fields.some(f => f[5]));
  await tablet.page.keyboard.press('ControlOrMeta+a');
  await tablet.cdp.send('Input.insertText', { text });
  await tablet.settle();
  await tablet.page.keyboard.press('Enter');
  await tablet.settle();
}

for (const [name, profile] of [['landscape', small], ['portrait', upright]]) {
  test(`a finger writes into a table, pushes it both ways, and takes it from a file, ${name}`, () => withTablet(profile, async tablet => {
    const { page } = tablet;
    await tablet.tap('Orders');
    await tablet.look(`orders-${name}`);
    await tablet.tap('Stock##view');
    await page.evaluate(() => {
      globalThis.inGesture = null;
      canvas.addEventListener('touchend', () => { globalThis.inGesture = document.activeElement.id; });
    });
    await tapCell(tablet, 'what');
    assert.equal(await page.evaluate(() => inGesture), 'line', 'the keyboard opens within the tap');
    await write(tablet, 'Hen');
    await tablet.until('a line of stock', s => s.items === 1);
    // What is typed counts when something else is tapped, too.
    await tapCell(tablet, 'what');
    await tablet.until('a field', s => s.fields.some(f => f[5]));
    await tablet.cdp.send('Input.insertText', { text: ' hackle' });
    await tablet.settle();
    await tapCell(tablet, 'on hand', 1);
    await tablet.until('the other field', s => s.fields.some(f => f[0] === 'on hand' && f[5]));
    await tapCell(tablet, 'on hand');
    await tablet.until('the first line', s => s.fields.some(f => f[0] === 'on hand' && f[5]));
    assert.deepEqual(await inFocus(tablet), ['line', 'decimal'], 'a number has the keypad');
    await write(tablet, '12');

    let saving = page.waitForEvent('download');
    await tablet.tap('Write table');
    const file = await saving;
    assert.match(file.suggestedFilename(), /^stock-[\d-]+\.csv$/);
    const lines = readFileSync(await file.path(), 'utf8').trim().split('\r\n');
    assert.equal(lines.length, 2);
    assert.match(lines[1], /Hen hackle/);
    for (let i = 1; i <= 40; ++i) lines.push(lines[1].replace('Hen hackle', `Dubbing ${i}`));
    const table = path.join(tablet.data, 'bought.csv');
    writeFileSync(table, lines.join('\r\n'));
    const choosing = page.waitForEvent('filechooser');
    await tablet.tap('Look into');
    await (await choosing).setFiles(table);
    await tablet.until('what it would change', s => 'Take these changes' in s.controls);
    await tablet.tap('Take these changes');
    await tablet.until('forty more', s => s.items === 41);
    await tablet.look(`stock-${name}`);

    // Up, and to the side: no press, no keyboard, and the names stay.
    const cell = await tablet.place('cell');
    const from = { x: profile.viewport.width * 0.5, y: profile.viewport.height * 0.7 };
    await tablet.drag(from, { x: from.x, y: from.y - 150 });
    const { cell: now } = (await tablet.state()).controls;
    assert.ok(!now || now[1] < cell.y - 100, 'the rows follow the finger');
    assert.ok(!(await tablet.state()).fields.some(f => f[5]), 'nothing is typed into');
    assert.equal((await inFocus(tablet))[0], 'canvas');
    assert.ok('on hand##heading' in (await tablet.state()).controls);
    await tablet.drag({ x: profile.viewport.width * 0.8, y: from.y }, { x: profile.viewport.width * 0.2, y: from.y });
    const aside = await tablet.state();
    assert.ok(!('on hand##heading' in aside.controls), 'the columns follow the finger');
    assert.ok('what##heading' in aside.controls, 'the names stay in sight');
    await tablet.look(`stock-${name}-pushed`);
    await tablet.drag({ x: profile.viewport.width * 0.2, y: from.y }, { x: profile.viewport.width * 0.9, y: from.y });
    assert.ok('on hand##heading' in (await tablet.state()).controls, 'and back');

    // The keyboard comes up over the lower half: what is typed into stays above it.
    const rows = (await tablet.state()).fields.filter(([label]) => label === 'what');
    await tapCell(tablet, 'what', rows.length - 2);
    await tablet.until('a field', s => s.fields.some(f => f[5]));
    await page.setViewportSize({ width: profile.viewport.width, height: Math.round(profile.viewport.height * 0.5) });
    await page.waitForFunction(h => canvas.height === h, Math.round(profile.viewport.height * 0.5));
    await tablet.settle();
    const active = (await tablet.state()).fields.find(f => f[5]);
    assert.ok(active, 'it is still typed into');
    assert.ok(active[4] >= 30 && active[2] >= 0 && active[2] + active[4] <= profile.viewport.height * 0.5, `the field is at ${active}`);
    await tablet.look(`stock-${name}-keyboard`);
    await write(tablet, 'Coarse dubbing');
    assert.equal((await tablet.state()).items, 41);
    await page.setViewportSize(profile.viewport);
  }));
}
