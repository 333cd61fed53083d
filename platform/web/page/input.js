// Pointer, keys, wheel and pads, handed to the program in the units that it lays out in.

export function listen(canvas, bench, field, unit, wake) {
  const place = event => {
    const at = canvas.getBoundingClientRect();
    return [(event.clientX - at.left) / unit(), (event.clientY - at.top) / unit()];
  };
  const typedInto = ([x, y]) => Math.max(0, bench._ww_field_at(x, y) - 1) & 4;
  const fingers = { pointerdown: 0, pointermove: 1, pointerup: 2, pointercancel: 3 };
  const pointer = event => {
    const [x, y] = place(event);
    if (event.pointerType === 'mouse') {
      const down = { pointerdown: 1, pointerup: 0 }[event.type];
      if (down === 1) canvas.setPointerCapture(event.pointerId);
      bench._ww_mouse(x, y, down === undefined ? -1 : event.button, down ?? 0);
    } else {
      if (event.type === 'pointerdown') canvas.setPointerCapture(event.pointerId);
      bench._ww_finger(fingers[event.type], event.pointerId, x, y);
    }
    wake();
  };
  for (const kind of Object.keys(fingers)) canvas.addEventListener(kind, pointer);
  // Some browsers make a mouse of a finger afterwards, scroll, or open a menu.
  for (const kind of ['touchstart', 'touchmove', 'contextmenu']) {
    canvas.addEventListener(kind, event => event.preventDefault(), { passive: false });
  }
  // A finger that slid or came with others opens no field: the program takes it for no press, either.
  const slide = 16;
  let from = null, held = 0;
  canvas.addEventListener('touchstart', event => {
    from = event.touches.length === 1 ? place(event.touches[0]) : null;
    clearTimeout(held);
    if (!from || !typedInto(from)) return;
    const { clientX, clientY } = event.touches[0];
    held = setTimeout(() => field.menu(clientX, clientY), 500);
  });
  canvas.addEventListener('touchmove', event => {
    const [x, y] = place(event.touches[0]);
    if (!from || Math.hypot(x - from[0], y - from[1]) > slide) clearTimeout(held);
  });
  // A mouse that presses in the field that is typed into leaves the keys with it.
  canvas.addEventListener('mousedown', event => { if (typedInto(place(event))) event.preventDefault(); });
  canvas.addEventListener('touchend', event => {
    event.preventDefault();
    clearTimeout(held);
    const [x, y] = place(event.changedTouches[0]);
    const tapped = from && Math.hypot(x - from[0], y - from[1]) <= slide;
    const kind = tapped ? bench._ww_field_at(x, y) : 0;
    if (kind) field.arm(kind);
    else canvas.focus({ preventScroll: true });
  }, { passive: false });
  canvas.addEventListener('wheel', event => {
    event.preventDefault();
    const step = event.deltaMode ? 1 / 3 : 1 / 100; // lines or pixels
    bench._ww_wheel(-event.deltaX * step, -event.deltaY * step);
    wake();
  }, { passive: false });

  const key = event => {
    if (event.target.closest?.('button, a, dialog, main') || field.takes(event)) return;
    // The way out of the canvas, whose own keys begin with Tab.
    if (event.key === 'Tab' && event.shiftKey) return;
    const held = event.ctrlKey | event.shiftKey << 1 | event.altKey << 2 | event.metaKey << 3;
    bench.ccall('ww_key', null, ['string', 'string', 'number', 'number'],
      [event.key, event.code, event.type === 'keydown' ? 1 : 0, held]);
    // Keys of the browser's own stay with it: those with ctrl that mean nothing here, and the F row.
    const ours = event.ctrlKey || event.metaKey ? ['z', 'd', 's', 'e'].includes(event.key)
      : !/^F([2-9]|1\d)$/.test(event.key);
    if (ours && !event.altKey) event.preventDefault();
    wake();
  };
  addEventListener('keydown', event => { if (!event.repeat || field.takes(event)) key(event); });
  addEventListener('keyup', key);
  addEventListener('blur', () => { bench._ww_focus(0); wake(); });
  addEventListener('focus', () => { bench._ww_focus(1); wake(); });

  // A pad tells nothing by itself: it is asked while one is there.
  let down = [], asking = 0;
  const ask = () => {
    const pad = [...navigator.getGamepads()].find(p => p);
    if (!pad) { clearInterval(asking); asking = 0; return; }
    pad.buttons.forEach((button, i) => {
      if (button.pressed === !!down[i]) return;
      down[i] = button.pressed;
      bench._ww_pad(i, button.pressed ? 1 : 0);
      wake();
    });
  };
  addEventListener('gamepadconnected', () => { asking ||= setInterval(ask, 40); });
}
