// Text fields: the page's own field, unseen over the one that is drawn, is the real editor. So the
// on-screen keyboard opens, and accents, suggestions, selection and pasting are the browser's.

const line = document.getElementById('line'), lines = document.getElementById('lines'), menu = document.getElementById('edit');
const bytes = (text, letters) => new TextEncoder().encode(text.slice(0, letters)).length;

export class TextField {
  #bench; #wake; #canvas; #told;
  #on = null; // the element that is typed into
  #armed = 0;
  #put = null; // the text and the two ends of what the program marked last

  constructor(canvas, bench, wake, told) {
    this.#bench = bench; this.#wake = wake; this.#canvas = canvas; this.#told = told;
    for (const element of [line, lines]) {
      element.addEventListener('input', event => {
        // Keypads of numbers in many countries have a comma and no point.
        const at = element.selectionStart;
        if (event.data === ',' && element.inputMode === 'decimal') element.setRangeText('.', at - 1, at, 'end');
        this.#send(element);
      });
      element.addEventListener('blur', () => this.#left(element));
    }
    // Focus stays in the field while one of these is pressed.
    menu.addEventListener('mousedown', event => event.preventDefault());
    menu.addEventListener('click', event => { if (event.target.value) this.#edit(event.target.value); });
    document.addEventListener('pointerdown', event => { if (!menu.contains(event.target)) menu.hidden = true; }, true);
    document.addEventListener('selectionchange', () => {
      if (this.#on === document.activeElement && !this.#is_put(this.#on)) this.#send(this.#on);
    });
  }

  /// Whether that is what the program itself has marked: told again, it would lose where the mark began.
  #is_put(element) {
    return this.#put && element.value === this.#put[0] &&
      element.selectionStart === this.#put[1] && element.selectionEnd === this.#put[2];
  }

  #send(element) {
    if (this.#on !== element) return;
    this.#put = null;
    this.#bench.ccall('ww_text', null, ['string', 'number', 'number'],
      [element.value, bytes(element.value, element.selectionStart), bytes(element.value, element.selectionEnd)]);
    this.#wake();
  }

  #left(element) {
    if (this.#on !== element) return;
    this.#on = null;
    this.#bench._ww_text_done();
    // When the whole window is left, the page would give the keys back to a field that nobody reads.
    if (document.activeElement === element) this.#canvas.focus({ preventScroll: true });
    this.#wake();
  }

  /// Within the gesture itself, or a tablet opens no keyboard: `kind` as ww_field_at has it.
  arm(kind) {
    // Another tap into the field that is typed into: its text stays, and the program says where the caret goes.
    if ((kind - 1) & 4 && this.#on) return this.#on.focus({ preventScroll: true });
    this.#on = null; // the text of the one before is no longer the program's
    const element = (kind - 1) & 2 ? lines : line;
    element.value = '';
    element.inputMode = (kind - 1) & 1 ? 'decimal' : 'text';
    this.#armed = performance.now();
    element.focus({ preventScroll: true });
    // Where no field came of it, the keyboard goes again.
    setTimeout(() => { if (!this.#on && document.activeElement === element) this.#canvas.focus({ preventScroll: true }); }, 1500);
    return undefined;
  }

  /// Where a finger or a mouse has put the caret, or what it has marked, by characters.
  caret(from, to) {
    const element = this.#on, all = element ? [...element.value] : [];
    if (!element) return;
    const at = count => all.slice(0, count).join('').length;
    const [low, high] = [at(Math.min(from, to)), at(Math.max(from, to))];
    this.#put = [element.value, low, high];
    element.setSelectionRange(low, high, from > to ? 'backward' : 'forward');
  }

  /// The field is held down: what a browser offers there for its own fields.
  menu(x, y) {
    if (!this.#on || !navigator.clipboard?.readText) return;
    menu.hidden = false;
    menu.style.left = Math.max(8, Math.min(x, innerWidth - menu.offsetWidth - 8)) + 'px';
    menu.style.top = (y > menu.offsetHeight + 48 ? y - menu.offsetHeight - 32 : y + 48) + 'px';
  }

  async #edit(what) {
    const element = this.#on;
    menu.hidden = true;
    if (!element) return;
    const [from, to] = [element.selectionStart, element.selectionEnd];
    if (what === 'all') element.select();
    if (what === 'copy') await navigator.clipboard.writeText(from < to ? element.value.slice(from, to) : element.value)
      .catch(() => this.#told('The browser did not let the text be copied'));
    if (what === 'paste') {
      const text = await navigator.clipboard.readText().catch(() => null);
      if (text === null) this.#told('The browser did not let the text be pasted: allow this page to read what was copied, or use Paste of its keyboard');
      if (text === '') this.#told('There is no text to paste');
      if (!text || element !== this.#on) return;
      element.setRangeText(text, element.selectionStart, element.selectionEnd, 'end');
    }
    this.#send(element);
  }

  /// The program's field: an empty label when there is none.
  field(label, text, box, number, many, unit) {
    if (!label) {
      const was = this.#on;
      this.#on = null;
      menu.hidden = true;
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
      (event.isComposing || event.keyCode === 229 || !(['Escape', 'Tab'].includes(event.key) ||
        (event.key === 'Enter' && (event.target === line || event.ctrlKey)) ||
        (event.target === line && ['ArrowUp', 'ArrowDown'].includes(event.key)) ||
        (event.ctrlKey && ['d', 's', 'e'].includes(event.key))));
  }
}
