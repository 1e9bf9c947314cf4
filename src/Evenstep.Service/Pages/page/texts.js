// The page's language. Its sentences are modules that the service makes.

import { languages } from "./languages.js";

export { languages };

const languageName = "evenstep-language";
let chosen = "";
let table = {};

export const language = () => chosen;

export async function speak(tag = firstChoice()) {
  table = (await import(`./${tag}.js`)).texts;
  chosen = tag;
}

export const keepLanguage = tag => keep("localStorage", languageName, tag);

/** Some browsers keep nothing: then it is asked for again. */
export function keep(storage, name, value) {
  try {
    window[storage].setItem(name, value);
  } catch {}
}

export function kept(storage, name) {
  try {
    return window[storage].getItem(name) ?? "";
  } catch {
    return "";
  }
}

/** Keys of a group are parted by a dot. A sentence that bends has a form for each kind of count. */
export function say(key, values = {}) {
  const text = key.split(".").reduce((group, part) => group?.[part], table);
  return (typeof text === "object" ? formOf(text, values.count) : text)?.replace(/\{(\w+)\}/g, (_, name) => values[name] ?? "");
}

const formOf = (forms, count) => forms[count] ?? forms[new Intl.PluralRules(chosen).select(count)] ?? forms.other;

export const numberText = (value, digits = 2) => new Intl.NumberFormat(chosen, { maximumFractionDigits: digits }).format(value);

export const moneyText = (amount, currency, digits = 2) => (currency
  ? new Intl.NumberFormat(chosen, { style: "currency", currency, minimumFractionDigits: digits, maximumFractionDigits: digits }).format(amount)
  : numberText(amount));

export const percentText = percent => say("percent", { value: numberText(percent, 0) });

export const powerText = power => say("power", { value: numberText(power, power < 20 ? 1 : 0) });

export const rangeText = (from, to) =>
  (numberText(from, 0) === numberText(to, 0) ? powerText(from) : say("powers", { from: numberText(from, 0), to: numberText(to, 0) }));

export const stepText = step => (step === null || step === undefined ? say("noStep") : numberText(step, 2));

export const millimetresText = mm => `${numberText(mm, 1)} mm`;

export const differenceText = (amount, write) => (amount > 0 ? `+${write(amount)}` : amount < 0 ? `−${write(-amount)}` : write(0));

export const dateText = date => new Intl.DateTimeFormat(chosen, { dateStyle: "long" }).format(date);

export const barrelText = barrel => say("barrel", { inches: numberText(Number.parseFloat(barrel), 3) });

export const unitText = unit => (unit ? say(`unit.${unit}`) : "");

function firstChoice() {
  const wanted = [kept("localStorage", languageName), ...navigator.languages.map(tag => tag.slice(0, 2).toLowerCase())];
  return wanted.find(tag => languages.some(([known]) => known === tag)) ?? languages[0][0];
}

/** Fetched before the rest of the page is here. */
export const firstWords = speak();
