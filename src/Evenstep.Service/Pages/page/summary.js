// What the advice comes to, in a sentence and four figures.
import { el, replace, sentences } from "./dom.js";
import { moneyText, numberText, percentText, rangeText, say, stepText } from "./texts.js";
import { button } from "./controls.js";
import { brightnessOf, moonsText, usableViews } from "./views.js";

const noneHelps = "no-single-change-helps";

export const isHelp = note => /-helps?$/.test(note.code);

export function showSummary(answer, handle) {
  const headline = headlineOf(answer);
  replace(
    document.getElementById("summary"),
    el("p.headline", headline),
    el("p.standing", servedText(answer)),
    answer.outcome === "infeasible" ? conflictsOf(answer, handle) : figuresOf(answer));
  return [headline, servedText(answer)].filter(Boolean).join(" ");
}

function headlineOf({ outcome, purchases, totalPrice, currency }) {
  const values = { count: purchases.length, price: totalPrice === null ? "" : moneyText(totalPrice, currency) };
  return say(`headline.${outcome === "best-found" && purchases.length === 0 ? "nothing-worthwhile" : outcome}`, values);
}

const servedText = ({ before, after, purchases }) => (after === null ? ""
  : purchases.length === 0 ? say("servedNow", { after: percentText(after.servedPercent) })
  : say("servedThen", { before: percentText(before.servedPercent), after: percentText(after.servedPercent) }));

function figuresOf({ telescopes, before, after }) {
  const views = telescopes.flatMap(telescope => usableViews(telescope.after));
  if (views.length === 0) {
    return null;
  }

  const fields = views.map(view => view.trueFieldDeg);
  const pupils = views.flatMap(view => [view.exitPupilMm, view.exitPupilMm * view.power / (view.powerAtShortest ?? view.power)]);
  const powers = views.flatMap(view => [view.power, view.powerAtShortest ?? view.power]);
  const [brightest, dimmest] = [Math.max(...pupils), Math.min(...pupils)];
  return el("dl.figures",
    figure(say("figure.sky"), `${numberText(Math.max(...fields), 2)}°`, moonsText(Math.max(...fields))),
    figure(say("figure.brightness"), brightnessOf(brightest).word, say("downTo", { word: brightnessOf(dimmest).word })),
    figure(say("figure.power"), rangeText(Math.min(...powers), Math.max(...powers)), say("largestStepFigure", { step: stepText(after.largestStep) })),
    figure(say("figure.served"), percentText(after.servedPercent), say("beforeFigure", { before: percentText(before.servedPercent) })),
    figure(say("figure.comfortable"), percentText(after.comfortablePercent), say("beforeFigure", { before: percentText(before.comfortablePercent) })));
}

const figure = (name, value, beside) => el("div", el("dt", name), el("dd", el("span.value", value), el("span.beside", beside)));

function conflictsOf({ conflicts, notes }, handle) {
  return [
    sentences(conflicts.demands.map(demand => demand.text)),
    el("ul.helps", notes.filter(isHelp).map(note => el("li",
      note.code === noneHelps ? null : button(say("doThis"), () => handle.change(note.values), { "aria-label": `${say("doThis")}: ${note.text}` }),
      note.text))),
  ];
}
