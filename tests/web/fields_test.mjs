// What is typed into fields and tables: by a keyboard, by hand, and back after the page was left.

import assert from 'node:assert/strict';
import test from 'node:test';
import { small, withTablet } from './driver.mjs';

const field = tablet => tablet.page.evaluate(() => {
  const { tagName, value, selectionStart, selectionEnd } = document.activeElement;
  return { tagName, value, marked: [selectionStart, selectionEnd] };
});
const insert = (tablet, text) => tablet.cdp.send('Input.insertText', { text });

test('recipes are found by a word of a material, as on the desktop', () => withTablet(small, async tablet => {
  await tablet.tap('Recipes');
  await tablet.tap('material');
  await insert(tablet, 'brass bead');
  const found = await tablet.until('those without one are gone', s => !('Sill Dun##sill-dun' in s.controls) && s);
  assert.ok('Weirfoot Jig##weirfoot-jig' in found.controls, 'one with it is there');
  assert.equal(found.trouble, '');
}));

test('a mark that is made by hand keeps the place where it began, both ways', () => withTablet(small, async tablet => {
  await tablet.tap('Recipes');
  await tablet.tap('search');
  await insert(tablet, 'a long word of the weir');
  await tablet.settle();
  const [left, top, , height] = (await tablet.state()).controls['##search'];
  const drag = async xs => {
    await tablet.page.waitForTimeout(700);
    await tablet.page.mouse.move(left + xs[0], top + height / 2);
    await tablet.page.mouse.down();
    for (const x of xs.slice(1)) {
      await tablet.page.mouse.move(left + x, top + height / 2);
      await tablet.settle();
      await tablet.page.waitForTimeout(100); // the browser tells of a selection in its own time
    }
    const { marked } = await field(tablet);
    await tablet.page.mouse.up();
    await tablet.settle();
    return marked;
  };
  const [, from] = await drag([150, 110]);
  const back = await drag([150, 110, 70, 30]);
  assert.equal(back[1], from, 'its end is where it began');
  const on = await drag([30, 70, 110, 150]);
  assert.deepEqual(on, back);
}));

test('a window that was left and has come back hears keys', () => withTablet(small, async tablet => {
  await tablet.tap('Recipes');
  await tablet.tap('search');
  await insert(tablet, 'weir');
  await tablet.settle();
  // What a browser does when its window is left and comes back.
  await tablet.page.evaluate(() => {
    document.activeElement.dispatchEvent(new FocusEvent('blur'));
    dispatchEvent(new FocusEvent('blur'));
    dispatchEvent(new FocusEvent('focus'));
  });
  await tablet.settle();
  assert.equal((await field(tablet)).tagName, 'CANVAS');
  await tablet.page.keyboard.press('Escape');
  await tablet.until('the bench', s => !('##search' in s.controls));
}));

test('letters of a keyboard begin a cell, and a comma of a keypad of numbers is a point', () => withTablet(small, async tablet => {
  await tablet.tap('Orders');
  await tablet.settle();
  const { items } = await tablet.state();
  await tablet.page.keyboard.press('ArrowRight');
  await tablet.settle();
  await tablet.page.keyboard.type('12');
  await tablet.until('the cell is typed into', s => s.fields.some(([, , , , , active]) => active));
  await tablet.settle();
  assert.equal((await field(tablet)).value, '12');
  await tablet.page.keyboard.press('Escape');
  assert.equal((await tablet.state()).items, items);

  await tablet.tap('Orders');
  await tablet.tap('Water');
  await tablet.bring('fall metres');
  await tablet.tap('fall metres');
  await tablet.until('the field', s => s.fields.some(([label, , , , , active]) => active && label === 'metres'));
  await tablet.page.keyboard.type('1,25');
  await tablet.settle();
  assert.equal((await field(tablet)).value, '1.25');
}));
