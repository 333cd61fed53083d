// Text fields: the page's own field, unseen over the one that is drawn, is the real editor. So the
// on-screen keyboard opens, and accents, suggestions, selection and pasting are the browser's.

const line = document.getElementById('line'), lines = document.getElementById('lines');
const bytes = (text, letters) => new TextEncoder().encode(text.slice(0, letters)).length;

export class TextField {
  #bench; #wake; #canvas;
  #on = null; // the element that is typed into
  #armed = 0;

  constructor(canvas, bench, wake) {
    this.#bench = bench; this.#wake = wake; this.#canvas = canvas;
    for (const element of [line, lines]) {
      element.addEventListener('input', () => this.#send(element));
      element.addEventListener('blur', () => this.#left(element));
    }
    document.addEventListener('selectionchange', () => { if (this.#on === document.activeElement) this.#send(this.#on); });
  }

  #send(element) {
    if (this.#on !== element) return;
    this.#bench.ccall('ww_text', null, ['string', 'number', 'number'],
      [element.value, bytes(element.value, element.selectionStart), bytes(element.value, element.selectionEnd)]);
    this.#wake();
  }

  #left(element) {
    if (this.#on !== element) return;
    this.#on = null;
    this.#bench._ww_text_done();
    this.#wake();
  }

  #pick(many) {
    const element = many ? lines : line;
    element.value = '';
    return element;
  }

  /// Within the gesture itself, or a tablet opens no keyboard: `kind` as ww_field_at has it.
  arm(kind) {
    const element = this.#pick((kind - 1) & 2);
    element.inputMode = (kind - 1) & 1 ? 'decimal' : 'text';
    this.#armed = performance.now();
    element.focus({ preventScroll: true });
    // Where no field came of it, the keyboard goes again.
    setTimeout(() => { if (!this.#on && document.activeElement === element) this.#canvas.focus({ preventScroll: true }); }, 1500);
  }

  /// The program's field: an empty label when there is none.
  field(label, text, box, number, many, unit) {
    if (!label) {
      const was = this.#on;
      this.#on = null;
      if (was) was.setAttribute('aria-hidden', 'true');
      // Between the tap and the frame that answers it there is no field yet.
      if (was || performance.now() - this.#armed > 400) this.#canvas.focus({ preventScroll: true });
      return;
    }
    const element = many ? lines : line, style = element.style;
    const at = this.#canvas.getBoundingClientRect();
    style.left = at.left + box.x * unit + 'px'; style.top = at.top + box.y * unit + 'px';
    style.width = box.width * unit + 'px'; style.height = box.height * unit + 'px';
    if (this.#on === element && element.ariaLabel === label) return; // moved alone
    element.inputMode = number ? 'decimal' : 'text';
    element.setAttribute('aria-label', label);
    element.removeAttribute('aria-hidden');
    this.#on = null;
    element.value = text;
    element.focus({ preventScroll: true });
    element.setSelectionRange(text.length, text.length);
    this.#on = element;
  }

  /// Whether a key belongs to the field alone.
  takes(event) {
    return (event.target === line || event.target === lines) &&
      (event.isComposing || !(['Escape', 'Tab'].includes(event.key) ||
        (event.key === 'Enter' && (event.target === line || event.ctrlKey)) ||
        (event.target === line && ['ArrowUp', 'ArrowDown'].includes(event.key)) ||
        (event.ctrlKey && ['d', 's', 'e'].includes(event.key))));
  }
}
