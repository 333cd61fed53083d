// The document beside the canvas, for screen readers: headings, texts and buttons in the order of
// reading. A row that stays keeps its element, so that the reader's place is not lost.

const tags = { title: 'h1', heading: 'h2', text: 'p', live: 'p', control: 'button' };

export class Outline {
  #main = document.getElementById('outline');
  #press;

  constructor(press) {
    this.#press = press;
    this.#main.addEventListener('click', event => {
      if (event.target.dataset.control) this.#press(Number(event.target.dataset.control));
    });
  }

  show(rows) {
    rows.forEach(([kind, text, control], i) => {
      let element = this.#main.children[i];
      if (element?.dataset.kind !== kind) {
        const made = document.createElement(tags[kind]);
        made.dataset.kind = kind;
        if (kind === 'live') made.setAttribute('aria-live', 'polite');
        if (element) element.replaceWith(made); else this.#main.append(made);
        element = made;
      }
      if (element.textContent !== text) element.textContent = text;
      if (control >= 0) element.dataset.control = control;
    });
    while (this.#main.children.length > rows.length) this.#main.lastChild.remove();
  }
}
