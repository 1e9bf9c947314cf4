/**
 * The few words that the elements add to what the service says.
 */

import { words } from './words.js';

/** English for every language that is not spoken, as the service does. */
export function labelsFor(language) {
  const known = words[language.toLowerCase().split('-')[0]] ?? words.en;
  return (key, values = {}) => known[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);
}

export function money(amount, currency, language) {
  const digits = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
  try {
    return new Intl.NumberFormat(language, { style: 'currency', currency, ...digits }).format(amount);
  } catch {
    // A shop may name its currency as it likes.
    return `${new Intl.NumberFormat(language, digits).format(amount)} ${currency}`;
  }
}

/** Rounded down, so that not quite all is never called all. */
export function percent(value, language) {
  return new Intl.NumberFormat(language, { style: 'percent' }).format(Math.floor(value) / 100);
}
