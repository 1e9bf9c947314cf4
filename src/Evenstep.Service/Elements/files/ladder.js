/**
 * <evenstep-ladder>: the power ladder of a telescope and what there is to look through.
 *
 * The telescope is one of a stored catalogue (`catalogue` and `telescope`), or given in full (`aperture-mm`,
 * `focal-length-mm`, `focuser-barrel`, and perhaps `name`). `owned` names items of the catalogue, separated by spaces. Anything
 * else an assessment can ask for is set as the property `request`, which then counts alone.
 */

import { ask } from './asking.js';
import { AskingElement, fieldsOf, observerAttributes, observerOf, wordsOf } from './element.js';

const telescopeFields = {
  'telescope': ['id', String],
  'name': ['name', String],
  'aperture-mm': ['apertureMm', Number],
  'focal-length-mm': ['focalLengthMm', Number],
  'focuser-barrel': ['focuserBarrel', String],
};

const otherAttributes = ['browser-key', 'catalogue', 'owned', 'seeing-arcsec', 'enough-step'];

class LadderElement extends AskingElement {
  static observedAttributes = [...Object.keys(telescopeFields), ...otherAttributes, ...observerAttributes];

  #request;

  /** The whole request, in place of the attributes. */
  get request() {
    return this.#request ?? this.#requestOfAttributes();
  }

  set request(request) {
    this.#request = request;
    this.refresh();
  }

  async answer(signal) {
    const answer = await ask('v1/assessments', { accept: 'image/svg+xml', language: this.language, key: this.key, body: this.request, signal });
    return [this.takeIn(await answer.text())];
  }

  #requestOfAttributes() {
    return {
      telescopes: [fieldsOf(this, telescopeFields)],
      observer: observerOf(this),
      owned: wordsOf(this.getAttribute('owned') ?? '').map(id => ({ id })),
      catalogue: this.hasAttribute('catalogue') ? { id: this.getAttribute('catalogue') } : null,
      site: fieldsOf(this, { 'seeing-arcsec': ['seeingArcsec', Number] }),
      preferences: fieldsOf(this, { 'enough-step': ['enoughStep', Number] }),
    };
  }
}

customElements.define('evenstep-ladder', LadderElement);
