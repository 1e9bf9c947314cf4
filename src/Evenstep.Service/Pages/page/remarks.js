// What the service says in sentences, and which view is for what.
import { el, sentences } from "./dom.js";
import { millimetresText, moneyText, numberText, percentText, powerText, say, stepText } from "./texts.js";
import { nameOf } from "./catalogue.js";
import { isHelp } from "./summary.js";
import { throughText } from "./views.js";

/** The Sun's warning stands above already. */
export function remarksOf({ cautions, notes, demands }) {
  const said = [...cautions.filter(caution => caution.code !== "sun"), ...notes.filter(note => !isHelp(note))].map(remark => remark.text);
  const framed = (demands ?? []).filter(demand => demand.trueFieldDeg !== null && demand.met).map(demand => say("framed", {
    name: demand.name ?? say("frameUnnamed"), width: numberText(demand.widthDeg, 2), field: numberText(demand.trueFieldDeg, 2),
  }));
  return said.length + framed.length === 0 ? null : sentences([...framed, ...said]);
}

export function targetsOf(telescopes) {
  const shown = telescopes.filter(telescope => telescope.after?.targets?.length > 0);
  return shown.map(telescope => [
    telescopes.length > 1 && el("h3", telescope.name),
    el("ul.targets", groupsOf(telescope.after.targets).map(([view, targets]) => el("li",
      el("p", view ? [el("strong", throughText(view)), el("span.quiet", ` ${viewText(view)}`)] : say("noView")),
      targetList(targets.filter(target => target.fits)),
      targetList(targets.filter(target => !target.fits), say("tooWide"))))),
  ]);
}

function groupsOf(targets) {
  const groups = new Map();
  targets.forEach(target => {
    const key = JSON.stringify(target.view && [target.view.eyepieceId, target.view.barlowId, target.view.factor]);
    groups.set(key, [...(groups.get(key) ?? []), target]);
  });
  return [...groups.values()].map(group => [group[0].view, group]).sort(([one], [two]) => (two?.trueFieldDeg ?? 0) - (one?.trueFieldDeg ?? 0));
}

const viewText = view => `${numberText(view.trueFieldDeg, 2)}° · ${say("exitPupil", { mm: millimetresText(view.exitPupilMm) })} · ${powerText(view.power)}`;

const targetList = (targets, lead) => (targets.length > 0 ? el("p", lead ? el("em", lead) : null, targets.map(targetText).join(" · ")) : null);

const targetText = ({ name, commonName }) => (commonName && commonName !== name ? `${commonName} (${unbroken(name)})` : unbroken(name));

const unbroken = name => (name.length < 10 ? name.replaceAll(" ", "\u00a0") : name);

export function pathOf({ steps, notes }, currency) {
  return steps.length === 0 ? null : [
    notes.map(({ text }) => el("p", text)),
    el("ol.path", steps.map(step => el("li",
      el("strong", step.name ?? nameOf(step.itemId)),
      el("span", ` ${say("pathStep", {
        price: moneyText(step.price, currency), total: moneyText(step.totalPriceSoFar, currency), step: stepText(step.after.largestStep),
        served: percentText(step.after.servedPercent),
      })} `),
      el("span.quiet", step.lossPercent > 0
        ? say("pathLoss", { loss: numberText(step.lossPercent, 1), best: stepText(step.bestForTheMoney) })
        : say("pathNoLoss"))))),
  ];
}
