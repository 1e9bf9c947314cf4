// What to think of a list of one's own.
import { el, sentences } from "./dom.js";
import { differenceText, moneyText, numberText, percentText, say, stepText } from "./texts.js";
import { nameOf } from "./catalogue.js";

export function opinionOf({ list, advice, difference }) {
  const { currency, excluded } = advice;
  const out = excluded.filter(({ itemId }) => itemId in list.exclusions);
  return [
    el("p", say("opinionList", {
      price: moneyText(list.totalPrice, currency), served: percentText(list.after.servedPercent), step: stepText(list.after.largestStep),
    })),
    difference.totalPrice === null ? null : el("p", say("opinionDifference", {
      price: differenceText(difference.totalPrice, amount => moneyText(amount, currency)),
      served: differenceText(difference.servedPercent, amount => numberText(amount, 1)),
    })),
    list.breaches.length + out.length === 0 && el("p", say("opinionClean")),
    list.breaches.length > 0 && [el("h3", say("breaches")), sentences(list.breaches.map(breach => breach.text))],
    out.length > 0 && [el("h3", say("exclusions")), sentences(out.map(({ itemId, detail }) => `${nameOf(itemId)}: ${detail}`))],
  ];
}
