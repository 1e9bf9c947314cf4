/**
 * The few words that the elements add to what the service says.
 */

const english = {
  heading: telescope => `Recommended for ${telescope}`,
  total: price => `${price} in all`,
  served: (before, after) => `Useful powers served: ${before} now, ${after} with these.`,
  nothing: 'Nothing needs to be bought.',
  infeasible: 'No set of purchases meets these wishes.',
  failed: 'This cannot be shown.',
};

const german = {
  heading: telescope => `Empfohlen für ${telescope}`,
  total: price => `Zusammen ${price}`,
  served: (before, after) => `Versorgter Nutzbereich: jetzt ${before}, damit ${after}.`,
  nothing: 'Es muss nichts gekauft werden.',
  infeasible: 'Keine Zusammenstellung erfüllt diese Wünsche.',
  failed: 'Das lässt sich nicht anzeigen.',
};

/** English for every language that is not spoken, as the service does. */
export function labelsFor(language) {
  return language.toLowerCase().split('-')[0] === 'de' ? german : english;
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
