/**
 * <evenstep-advice>: what goes well with a telescope of a stored catalogue.
 *
 * `catalogue` and `telescope` are required. `owned` names items that the visitor has or has in the cart; `budget` and the
 * other attributes are those of the service's product pages. With `ladder` the picture is shown too.
 */

import { ask } from './asking.js';
import { AskingElement, isOn, make, wordsOf } from './element.js';
import { money, percent } from './labels.js';

/** Parameters of the address by the attribute that gives them. */
const parameters = {
  'budget': 'budget',
  'age': 'age',
  'least-eye-relief-mm': 'leastEyeReliefMm',
  'seeing-arcsec': 'seeingArcsec',
  'prefer': 'prefer',
  'barlows': 'barlows',
  'zooms': 'zooms',
  'max-purchases': 'maxPurchases',
  'enough-step': 'enoughStep',
};

/** Parameters that may be there several times. */
const lists = { 'owned': 'owned', 'observes': 'observes' };

class AdviceElement extends AskingElement {
  static observedAttributes = ['browser-key', 'catalogue', 'telescope', 'ladder', 'wears-spectacles', ...Object.keys(parameters), ...Object.keys(lists)];

  async answer(signal) {
    const how = { language: this.language, key: this.key, signal };
    const [advice, picture] = await Promise.all([
      ask(this.#address(), { accept: 'application/json', ...how }),
      this.hasAttribute('ladder') ? ask(this.#address(), { accept: 'image/svg+xml', ...how }) : null,
    ]);
    const shown = this.#tell(await advice.json());
    shown.append(...picture ? [this.takeIn(await picture.text())] : []);
    return [shown];
  }

  #address() {
    const [catalogue, telescope] = ['catalogue', 'telescope'].map(name => encodeURIComponent(this.getAttribute(name) ?? ''));
    return `v1/catalogues/${catalogue}/telescopes/${telescope}/recommendation?${this.#query()}`;
  }

  /** Always in the same order, so that the answer is found in caches. */
  #query() {
    const query = new URLSearchParams();
    for (const [attribute, parameter] of Object.entries(parameters).filter(([attribute]) => this.hasAttribute(attribute))) {
      query.append(parameter, this.getAttribute(attribute));
    }

    for (const [attribute, parameter] of Object.entries(lists)) {
      wordsOf(this.getAttribute(attribute) ?? '').sort().forEach(word => query.append(parameter, word));
    }

    if (this.hasAttribute('wears-spectacles')) {
      query.append('wearsSpectacles', isOn(this.getAttribute('wears-spectacles')));
    }

    return query;
  }

  #tell(advice) {
    return make('section', { className: 'advice', part: 'advice' },
      make('h2', { part: 'heading', textContent: this.say('heading', { telescope: advice.telescopes.map(telescope => telescope.name).join(', ') }) }),
      ...this.#outcomeOf(advice),
      ...advice.notes.map(note => make('p', { className: 'note', part: 'note', textContent: note.text })),
      ...advice.cautions.map(caution => make('p', { className: 'caution', part: 'caution', textContent: caution.text })));
  }

  #outcomeOf(advice) {
    if (advice.outcome === 'infeasible' || advice.purchases.length === 0) {
      const text = this.say(advice.outcome === 'infeasible' ? 'infeasible' : 'nothing');
      return [make('p', { className: 'served', part: 'outcome', textContent: text })];
    }

    const inWords = share => percent(share, this.language);
    const [served, comfortable] = ['servedPercent', 'comfortablePercent']
      .map(field => ({ before: inWords(advice.before[field]), after: inWords(advice.after[field]) }));
    return [
      make('ol', { part: 'purchases' }, ...advice.purchases.map(purchase => this.#item(purchase, advice.currency))),
      make('p', { className: 'total', part: 'total', textContent: this.say('total', { price: money(advice.totalPrice, advice.currency, this.language) }) }),
      make('p', { className: 'served', part: 'served', textContent: this.say('served', served) }),
      make('p', { className: 'served', part: 'comfortable', textContent: this.say('comfortable', comfortable) }),
    ];
  }

  #item(purchase, currency) {
    const name = purchase.name ?? purchase.itemId;
    const address = webAddress(purchase.url);
    return make('li', { part: 'purchase' },
      make('div', { className: 'item' },
        address ? make('a', { href: address, textContent: name, part: 'link' }) : make('span', { textContent: name }),
        make('span', { className: 'price', part: 'price', textContent: money(purchase.price, currency, this.language) })),
      ...purchase.reasons.map(reason => make('p', { className: 'reason', part: 'reason', textContent: reason.text })));
  }
}

/** The page of an item, relative to the host's page; null for what is no address of the web, such as a script. */
function webAddress(text) {
  if (!text || !URL.canParse(text, document.baseURI)) {
    return null;
  }

  const url = new URL(text, document.baseURI);
  return ['http:', 'https:'].includes(url.protocol) ? url.href : null;
}

customElements.define('evenstep-advice', AdviceElement);
