// The bench under fingers, on a tablet of 1180 x 820 with two dots to a pixel.

import assert from 'node:assert/strict';
import test from 'node:test';
import { Screen, landscape, portrait, small, withTablet } from './driver.mjs';

/// Apart in time, so that the second is no slip of the same knuckle.
const pause = tablet => tablet.page.waitForTimeout(600);

for (const [name, profile] of [['landscape', landscape], ['portrait', portrait]]) {
  test(`from the first start to the first step by touch, ${name}`, () => withTablet(profile, async tablet => {
    const dots = await tablet.page.evaluate(() => [canvas.width, canvas.height]);
    assert.deepEqual(dots, [2 * profile.viewport.width, 2 * profile.viewport.height]);
    assert.equal((await tablet.state()).screen, Screen.layOut);
    await tablet.look(`${name}-lay-out`);
    const began = await tablet.begin();
    assert.equal(began.at, 0);
    await tablet.look(`${name}-first-step`);
    // Whatever a finger is meant for is 44 CSS pixels at least, and on the glass.
    for (const [label, [x, y, width, height]] of Object.entries(began.controls)) {
      assert.ok(width >= 44 && height >= 44, `${label} is ${width} x ${height}`);
      assert.ok(x >= 0 && y >= 0 && x + width <= profile.viewport.width + 0.5 && y + height <= profile.viewport.height + 0.5, label);
    }
    await pause(tablet);
    await tablet.tap('on');
    assert.equal((await tablet.until('the next', s => s.events === 2)).events, 2);
  }));
}

test('fingers tap, slide, turn, pinch, push and hold, and the tablet is rotated in the middle', () => withTablet(small, async tablet => {
  await tablet.begin();
  await pause(tablet);

  // A wet hand wipes over the step: no press. One that lies a little unsteady: a press.
  const on = await tablet.place('on');
  await tablet.drag(on, { x: on.x - 80, y: on.y + 20 });
  assert.equal((await tablet.state()).events, 1);
  await tablet.drag(on, { x: on.x + 6, y: on.y - 5 }, 2);
  await tablet.until('a press', s => s.events === 2);

  // One finger turns the fly round; elsewhere it would do nothing to it.
  const before = await tablet.state();
  const fly = await tablet.place('wraps');
  await tablet.drag(fly, { x: fly.x + 60, y: fly.y });
  const turned = await tablet.state();
  assert.ok(Math.abs(turned.yaw - before.yaw) > 0.3, `yaw ${before.yaw} to ${turned.yaw}`);
  assert.equal(turned.events, before.events);

  // Two fingers: apart, around, along.
  const left = { x: fly.x - 30, y: fly.y }, right = { x: fly.x + 30, y: fly.y };
  await tablet.two([left, right], [{ x: fly.x - 60, y: fly.y }, { x: fly.x + 60, y: fly.y }]);
  const near = await tablet.state();
  // The pinch doubled the distance, so the picture is twice as large; the rounding of the browser's
  // touches, a pixel in 60, allows 5 %.
  assert.ok(Math.abs(near.zoom / turned.zoom - 2) < 0.1, `zoom ${turned.zoom} to ${near.zoom}`);
  const arc = angle => [{ x: fly.x - 60 * Math.cos(angle), y: fly.y - 60 * Math.sin(angle) }, { x: fly.x + 60 * Math.cos(angle), y: fly.y + 60 * Math.sin(angle) }];
  await tablet.two(arc(0), arc(0.6), 6);
  const rolled = await tablet.state();
  assert.ok(Math.abs(rolled.turn - near.turn - 0.6) < 0.1, `turn ${near.turn} to ${rolled.turn}`);
  await tablet.two([left, right], [{ x: left.x + 40, y: left.y }, { x: right.x + 40, y: right.y }]);
  assert.ok((await tablet.state()).shift > rolled.shift + 0.02, 'two fingers push the picture');
  assert.equal((await tablet.state()).events, before.events, 'none of this was a press');

  // A finger that stays brings more words, and is no press either.
  await tablet.touch('touchStart', [on]);
  await tablet.until('more words', s => s.more);
  await tablet.touch('touchEnd', []);
  await tablet.settle();
  assert.equal((await tablet.state()).events, before.events);
  await tablet.touch('touchStart', [on]);
  await tablet.until('fewer words', s => !s.more);
  await tablet.touch('touchEnd', []);

  // A list is pushed by a finger that lies on a row, and the row is not pressed.
  await tablet.tap('Settings');
  const row = await tablet.place('Left-handed: the pictures mirror');
  await tablet.drag(row, { x: row.x, y: row.y - 120 });
  const settings = await tablet.state();
  const label = Object.keys(settings.controls).find(l => l.startsWith('Left-handed'));
  const moved = label ? settings.controls[label][1] : -1;
  assert.ok(moved < row.y - 80, `the row went from ${row.y} to ${moved}`);
  assert.equal(settings.screen, Screen.settings);
  await tablet.tap('Settings');
  await tablet.until('the bench', s => s.screen === Screen.bench);

  // Rotation, a split screen, the smallest tablet: the step stays.
  for (const viewport of [{ width: 600, height: 960 }, { width: 480, height: 600 }, { width: 800, height: 480 }]) {
    await tablet.page.setViewportSize(viewport);
    await tablet.page.waitForFunction(([w, h]) => canvas.width === w && canvas.height === h, [viewport.width, viewport.height]);
    await tablet.settle();
    const there = await tablet.state();
    assert.equal(there.events, before.events);
    assert.equal(there.at, before.at);
    await tablet.look(`size-${viewport.width}x${viewport.height}`);
  }
}));
