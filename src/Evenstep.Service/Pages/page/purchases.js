// What to buy, why, and what if it cannot be had.
import { el, isWebAddress } from "./dom.js";
import { moneyText, percentText, say, stepText } from "./texts.js";
import { button, idOf } from "./controls.js";
import { nameOf } from "./catalogue.js";

export function purchasesOf(answer, state, handle) {
  const { purchases, spare, spareTogether, currency, totalPrice } = answer;
  return purchases.length === 0 && spare.length === 0 ? null : [
    el("ol.purchases", purchases.map(purchase => purchaseOf(purchase, answer, handle))),
    purchases.length > 0 && el("p.total", el("span", say("total")), el("strong", moneyText(totalPrice, currency)), leftText(state, totalPrice, currency)),
    spare.length > 0 && el("p", say("spare", { names: spare.map(one => nameOf(one.itemId ?? one)).join(", ") })),
    spareTogether?.length > 1 && el("p", say("spareTogether", { names: spareTogether.map(nameOf).join(", ") })),
  ];
}

function leftText(state, totalPrice, currency) {
  const left = Number(state.budget.replace(",", ".")) - totalPrice;
  return left > 0 && el("span.quiet", say("left", { price: moneyText(left, currency) }));
}

const purchaseOf = (purchase, answer, handle) => el("li",
  el("div.line",
    el("h3", isWebAddress(purchase.url)
      ? el("a", { href: purchase.url, rel: "noopener" }, purchase.name ?? purchase.itemId)
      : purchase.name ?? purchase.itemId),
    el("span.price", moneyText(purchase.price, answer.currency))),
  el("ul.reasons", purchase.reasons.map(reason => el("li", reason.text))),
  withoutText(purchase, answer),
  el("p", { class: "quiet unprinted", id: idOf(`unavailable.${purchase.itemId}`), hidden: true }),
  button(say("leaveOut"), () => handle.leaveOut(purchase.itemId),
    { class: "slight unprinted", "aria-label": say("leaveOutNamed", { name: purchase.name ?? purchase.itemId }) }));

const withoutText = ({ largestStepWithoutIt }, { after }) => (largestStepWithoutIt > after.largestStep
  ? el("p.quiet", say("withoutIt", { without: stepText(largestStepWithoutIt), step: stepText(after.largestStep) }))
  : null);

export function showUnavailable({ purchases, currency }) {
  purchases.filter(purchase => purchase.ifUnavailable).forEach(({ itemId, ifUnavailable }) => {
    const place = document.getElementById(idOf(`unavailable.${itemId}`));
    if (place) {
      place.textContent = unavailableText(ifUnavailable, currency);
      place.hidden = false;
    }
  });
}

const unavailableText = ({ outcome, itemIds, totalPrice, servedPercent }, currency) => (outcome === "infeasible" ? say("unavailable.infeasible")
  : itemIds.length === 0 ? say("unavailable.nothing")
  : say("unavailable.others", { names: itemIds.map(nameOf).join(", "), price: moneyText(totalPrice, currency), served: percentText(servedPercent) }));
