/**
 * What the elements have in common: they ask anew when an attribute changes, show how far they are, and tell the page.
 */

import { Refusal } from './asking.js';
import { labelsFor } from './labels.js';
import { read } from './picture.js';
import { sheet } from './style.js';

/** Fields of a request by the attribute that gives them, and how its text is read. */
const observerFields = {
  'age': ['age', Number],
  'pupil-mm': ['pupilMm', Number],
  'wears-spectacles': ['wearsSpectacles', isOn],
  'astigmatism-dioptres': ['astigmatismDioptres', Number],
  'least-eye-relief-mm': ['leastEyeReliefMm', Number],
  'observes': ['observes', wordsOf],
};

export const observerAttributes = Object.keys(observerFields);

/** An attribute without a value is on, as in HTML. */
export function isOn(text) {
  return text !== 'false';
}

export function wordsOf(text) {
  return text.split(/\s+/).filter(word => word !== '');
}

/** The fields that the attributes of an element give, by a table such as that above. */
export function fieldsOf(element, table) {
  return Object.fromEntries(Object.entries(table)
    .filter(([attribute]) => element.hasAttribute(attribute))
    .map(([attribute, [field, read]]) => [field, read(element.getAttribute(attribute))]));
}

export function observerOf(element) {
  return fieldsOf(element, observerFields);
}

/** Makes an HTML element. Texts are set as texts, never parsed. */
export function make(name, properties, ...children) {
  const made = Object.assign(document.createElement(name), properties);
  made.append(...children);
  return made;
}

/**
 * An element that shows what the service answers. The page hears `evenstep-ready` once it is shown, and `evenstep-failed`
 * with a reason; styles may ask for the states `asking`, `ready` and `failed`.
 */
export class AskingElement extends HTMLElement {
  #internals = this.attachInternals();
  #content = make('div', { className: 'content' });
  #asking = new AbortController();
  #isAwaited = false;

  constructor() {
    super();
    const root = this.attachShadow({ mode: 'open' });
    root.adoptedStyleSheets = [sheet];
    root.append(this.#content);
  }

  connectedCallback() {
    this.refresh();
  }

  disconnectedCallback() {
    this.#asking.abort();
  }

  attributeChangedCallback() {
    this.refresh();
  }

  /** The language of the part of the page that the element is in. */
  get language() {
    return this.closest('[lang]')?.lang || navigator.language || 'en';
  }

  /** A key for pages, where the service asks for one: whoever reads the page can read it. */
  get key() {
    return this.getAttribute('browser-key')?.trim();
  }

  get say() {
    return labelsFor(this.language);
  }

  /** Asks anew; changes made in one go are one question. */
  refresh() {
    if (this.#isAwaited) {
      return;
    }

    this.#isAwaited = true;
    queueMicrotask(() => {
      this.#isAwaited = false;
      if (this.isConnected) {
        this.#show();
      }
    });
  }

  async #show() {
    this.#asking.abort();
    const asking = this.#asking = new AbortController();
    this.#enter('asking');
    try {
      const content = await this.answer(asking.signal);
      this.#put(asking, content, 'ready', {});
    } catch (failure) {
      const reason = failure instanceof Refusal ? failure.message : String(failure);
      this.#put(asking, [make('p', { className: 'failure', role: 'alert', textContent: `${this.say('failed')} ${reason}` })], 'failed', { reason });
    }
  }

  /** Whatever was asked before the last change is of no interest any more. */
  #put(asking, content, state, detail) {
    if (asking.signal.aborted) {
      return;
    }

    this.#content.replaceChildren(...content);
    this.#enter(state);
    this.dispatchEvent(new CustomEvent(`evenstep-${state}`, { bubbles: true, composed: true, detail }));
  }

  #enter(state) {
    this.#internals.states.clear();
    this.#internals.states.add(state);
    this.#internals.ariaBusy = String(state === 'asking');
  }

  /** A picture as an element of this shadow tree, which keeps its ids to itself; its style is adopted. */
  takeIn(text) {
    const { drawing, style } = read(text);
    const drawn = new CSSStyleSheet();
    drawn.replaceSync(style);
    this.shadowRoot.adoptedStyleSheets = [sheet, drawn];
    drawing.setAttribute('part', 'picture');
    return drawing;
  }
}
