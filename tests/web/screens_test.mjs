// Every screen on a tablet held either way: each control can be hit by a finger and lies on the glass.

import assert from 'node:assert/strict';
import test from 'node:test';
import { landscape, portrait, withTablet } from './driver.mjs';

const views = { 'Write': ['Sizes', 'Text', 'Revisions'], 'Orders': ['Stock##view', 'Needs##view', 'Days##view', 'Cost##view', 'Classes##view'], 'Recipes': [], 'What if': [], 'Water': [], 'Check': ['Photo', 'True size', 'Batch'], 'Film': [], 'Settings': [], 'Keys': [] };
const looked = ['Write', 'Sizes', 'Text', 'Revisions', 'Stock', 'Recipes'];

/// What lies in a list may be scrolled away; what a finger can see of the rest has to be whole.
function hittable(state, { width, height }, where) {
  for (const [label, [x, y, w, h]] of Object.entries(state.controls)) {
    if (y + h < 0 || y > height) continue;
    assert.ok(w >= 43.5 && h >= 43.5, `${where}: ${label} is ${w} x ${h}`);
    assert.ok(x >= -0.5 && x + w <= width + 0.5, `${where}: ${label} is at ${x} and ${w} wide`);
  }
}

for (const [name, profile] of [['landscape', landscape], ['portrait', portrait]]) {
  test(`every screen can be used by fingers, ${name}`, () => withTablet({ ...profile, deviceScaleFactor: 1 }, async tablet => {
    for (const [door, parts] of Object.entries(views)) {
      await tablet.tap(door);
      for (const part of ['', ...parts]) {
        if (part) await tablet.tap(part);
        const where = (part || door).replace('##view', '');
        hittable(await tablet.state(), profile.viewport, where);
        if (process.env.WW_WEB_FULL) await tablet.page.screenshot({ path: `build/shots/web/screen-${name}-${where}.png` });
        if (looked.includes(where)) await tablet.look(`screen-${name}-${where.toLowerCase()}`);
      }
    }
  }));
}
