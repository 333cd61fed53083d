// The document beside the canvas, for screen readers: headings, texts and buttons in the order of
// reading. An element stays what it is as long as its row is there, so that neither the reader's place nor
// the focus is lost; a text that is read when it changes changes in its own element.

const tags = { title: 'h1', heading: 'h2', text: 'p', live: 'p', control: 'button' };

export class Outline {
  #main = document.getElementById('outline');

  constructor(press) {
    this.#main.addEventListener('click', event => {
      if (event.target.dataset.control) press(Number(event.target.dataset.control));
    });
  }

  #make(kind) {
    const made = document.createElement(tags[kind]);
    made.dataset.kind = kind;
    if (kind === 'live') made.setAttribute('aria-live', 'polite');
    if (kind === 'title') made.tabIndex = -1;
    return made;
  }

  show(rows) {
    const free = [...this.#main.children];
    const take = test => {
      const i = free.findIndex(test);
      return i < 0 ? undefined : free.splice(i, 1)[0];
    };
    // First what is there as it was, then texts that have changed; a button is never made another.
    const elements = rows.map(([kind, text]) => text && take(e => e.dataset.kind === kind && e.textContent === text));
    rows.forEach(([kind], i) => {
      elements[i] ||= (kind !== 'control' && take(e => e.dataset.kind === kind)) || this.#make(kind);
    });
    const focused = document.activeElement;
    const lost = free.includes(focused);
    for (const element of free) element.remove();
    let next = this.#main.firstChild;
    rows.forEach(([, text, control], i) => {
      const element = elements[i];
      if (element === next) next = next.nextSibling;
      else this.#main.insertBefore(element, next);
      if (element.textContent !== text) element.textContent = text;
      if (control >= 0) element.dataset.control = control;
    });
    if (lost) this.#main.firstChild.focus(); // what was pressed is gone: from the top
    else if (focused.isConnected && document.activeElement !== focused) focused.focus();
  }
}
