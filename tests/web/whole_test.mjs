// As somebody new would use it, by fingers alone and with the server stopped after the first visit: a
// fly from its first step to its last through a browser that is killed, a photo measured, the recipe
// given away as a file. WW_WEB_FULL=1: with all the dots of a tablet, which takes minutes here.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { Screen, landscape, portrait, root, small, upright, withTablet } from './driver.mjs';

const full = !!process.env.WW_WEB_FULL;

/// Taps where the step stands until `at` is reached, each a moment after the one before.
async function tie(tablet, until) {
  let state = await tablet.state();
  while (state.at < until) {
    const { at, events } = state;
    await tablet.page.waitForTimeout(520); // a second tap within half a second is a slip
    await tablet.tap('on');
    state = await tablet.until('the next', s => s.at > at || s.events > events);
  }
  return state;
}

for (const [name, profile] of [['landscape', full ? landscape : small], ['portrait', full ? portrait : upright]]) {
  test(`without a network a fly is tied, measured and given away by touch, ${name}`, () => withTablet(profile, async (tablet, server) => {
    await tablet.page.waitForFunction(() => navigator.serviceWorker.controller);
    await server.stop();
    await tablet.page.reload();
    await tablet.ready();

    await tablet.begin();
    // Some turns are counted one by one, then a press goes on to the next action.
    await tie(tablet, 2);
    await tablet.tap('Settings');
    await tablet.bring('A press counts a turn while winding');
    await tablet.tap('A press counts a turn while winding');
    await tablet.tap('Settings');
    const { of } = await tablet.until('the bench', s => s.screen === Screen.bench);
    const before = await tie(tablet, Math.floor(of / 2));
    await tablet.kill();
    await tablet.open();
    const after = await tablet.state();
    assert.deepEqual([after.at, after.events, after.screen], [before.at, before.events, Screen.bench]);
    await tablet.look(`whole-${name}-again`);
    await tie(tablet, of);
    await tablet.look(`whole-${name}-done`);

    const { page } = tablet; // the new browser's
    // Twenty millimetres of the picture's own scale, then the hook and the body.
    await tablet.tap('Check');
    await tablet.tap('Photo');
    const choosing = page.waitForEvent('filechooser');
    await tablet.tap('Choose a photo');
    await (await choosing).setFiles(path.join(root, 'assets/picture.png'));
    await tablet.until('the photo', s => s.photo);
    const list = profile.viewport.width > profile.viewport.height ? [0.2, 0.9] : [0.6, 0.95];
    await tablet.bring('Two points', ...list);
    await tablet.tap('Two points');
    await tablet.tap('photo', 0.2, 0.85);
    await tablet.tap('photo', 0.8, 0.85);
    await tablet.bring('##known', ...list);
    await tablet.tap('##known');
    assert.equal(await page.evaluate(() => document.activeElement.inputMode), 'decimal');
    await tablet.cdp.send('Input.insertText', { text: '20' });
    await tablet.settle();
    await page.keyboard.press('Enter'); // the key of the keyboard on the screen
    await tablet.settle();
    for (const [x, y] of [[0.7, 0.5], [0.3, 0.5], [0.14, 0.4]]) await tablet.tap('photo', x, y); // eye, bend, tail
    await tablet.bring('Keep these lengths', ...list);
    await tablet.look(`whole-${name}-photo`);
    const { readings } = await tablet.state();
    await tablet.tap('Keep these lengths');
    await tablet.until('lengths that are kept', s => s.readings > readings);

    await tablet.tap('Write');
    await tablet.tap('Revisions');
    const saving = page.waitForEvent('download');
    await tablet.tap('Save as file');
    const file = await saving;
    const recipe = JSON.parse(readFileSync(await file.path(), 'utf8'));
    assert.equal(file.suggestedFilename(), `${recipe.id}.json`);
    assert.equal(recipe.id, after.recipe);
    tablet.complaints = tablet.complaints.filter(c => !c.includes('ERR_CONNECTION_REFUSED'));
  }));
}
