// Every screen on a tablet held either way: each control can be hit by a finger and lies on the glass.

import assert from 'node:assert/strict';
import test from 'node:test';
import { landscape, portrait, withTablet } from './driver.mjs';

const views = { 'Write': ['Sizes', 'Text', 'Revisions'], 'Orders': ['Stock##view', 'Needs##view', 'Days##view', 'Cost##view', 'Classes##view'], 'Recipes': [], 'What if': [], 'Water': [], 'Check': ['Photo', 'True size', 'Batch'], 'Film': [], 'Settings': [], 'Keys': [] };
const looked = ['Write', 'Sizes', 'Text', 'Revisions', 'Stock', 'Recipes'];

/// What lies in a list may be scrolled away; what a finger can see of the rest has to be whole.
function hittable(state, { width, height }, where, least = 43.5) {
  for (const [label, [x, y, w, h]] of Object.entries(state.controls)) {
    if (y + h < 0 || y > height) continue;
    assert.ok(w >= least && h >= least, `${where}: ${label} is ${w} x ${h}`);
    assert.ok(x >= -0.5 && x + w <= width + 0.5, `${where}: ${label} is at ${x} and ${w} wide`);
  }
}

/// Through every screen and each of its parts.
async function visit(tablet, see) {
  for (const [door, parts] of Object.entries(views)) {
    await tablet.tap(door);
    for (const part of ['', ...parts]) {
      if (part) await tablet.tap(part);
      await see((part || door).replace('##view', ''));
    }
  }
}

for (const [name, profile] of [['landscape', landscape], ['portrait', portrait]]) {
  test(`every screen can be used by fingers, ${name}`, () => withTablet({ ...profile, deviceScaleFactor: 1 }, tablet => visit(tablet, async where => {
    hittable(await tablet.state(), profile.viewport, where);
    if (process.env.WW_WEB_FULL) await tablet.page.screenshot({ path: `build/shots/web/screen-${name}-${where}.png` });
    if (looked.includes(where)) await tablet.look(`screen-${name}-${where.toLowerCase()}`);
  })));
}

// The smallest tablet, a third of a large one beside another app, zoomed in by the browser, which gives
// the page fewer and larger pixels, and one of 13 inches.
for (const [name, width, height, zoom] of [['largest', 1366, 1024, 1], ['largest upright', 1024, 1366, 1], ['smallest', 800, 480, 1], ['smallest upright', 480, 800, 1], ['split', 480, 960, 1], ['zoomed', 1180, 820, 1.5]]) {
  test(`every screen can be used by fingers, ${name}`, () => withTablet({ hasTouch: true, isMobile: true, deviceScaleFactor: zoom,
    viewport: { width: Math.round(width / zoom), height: Math.round(height / zoom) } }, tablet => visit(tablet, async where => {
    hittable(await tablet.state(), tablet.page.viewportSize(), where);
    if (process.env.WW_WEB_FULL) await tablet.page.screenshot({ path: `build/shots/web/screen-${name}-${where}.png` });
  })));
}

test('every screen can be used by fingers, with letters half as large again', () => withTablet({ hasTouch: true, isMobile: true, deviceScaleFactor: 1,
  viewport: { width: 1180, height: 820 } }, async tablet => {
  await tablet.page.evaluate(() => { document.documentElement.style.fontSize = '24px'; canvas.style.width = '99.9%'; });
  await tablet.page.waitForFunction(() => canvas.unit === 1.5);
  await tablet.settle();
  await visit(tablet, async where => {
    hittable(await tablet.state(), { width: 1180 / 1.5, height: 820 / 1.5 }, where, 44 / 1.5);
    if (process.env.WW_WEB_FULL) await tablet.page.screenshot({ path: `build/shots/web/screen-larger-${where}.png` });
  });
}));

test('nothing lies under the edges that a device keeps for itself', () => withTablet({ hasTouch: true, isMobile: true, deviceScaleFactor: 1,
  viewport: { width: 960, height: 600 } }, async tablet => {
  await tablet.cdp.send('Emulation.setSafeAreaInsetsOverride', { insets: { top: 24, bottom: 20, left: 40, right: 30 } });
  await tablet.page.waitForFunction(() => canvas.getBoundingClientRect().top === 24);
  await tablet.settle();
  const { left, top, right, bottom } = await tablet.page.evaluate(() => canvas.getBoundingClientRect().toJSON());
  assert.deepEqual([left, top, right, bottom], [40, 24, 930, 580]);
  await tablet.begin(); // a finger still hits what it sees
  hittable(await tablet.state(), { width: 890, height: 556 }, 'the bench');
}));
