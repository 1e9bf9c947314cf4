// What more or less money would do: a curve, and a slider that moves the budget along it.
import { draw, el, replace } from "./dom.js";
import { moneyText, numberText, percentText, say, stepText } from "./texts.js";
import { button, idOf } from "./controls.js";

const height = 210;
const margin = { left: 46, right: 16, top: 24, bottom: 34 };
const stepTicks = [1, 1.2, 1.5, 2, 3, 4, 6, 8, 12, 20];

/** How far the slider reaches: twice the budget, rounded up, and the same until the budget leaves it. */
export function reachFor(budget, reach) {
  if (reach > 0 && budget <= reach && budget >= reach / 8) {
    return reach;
  }

  const wanted = Math.max(2 * budget, 100);
  const round = 10 ** Math.floor(Math.log10(wanted));
  return [1, 2, 3, 4, 5, 6, 8, 10].map(times => times * round).find(amount => amount >= wanted) ?? wanted;
}

const pointAt = (points, budget) => points.findLast(point => point.totalPrice <= budget);

export function curveOf(curve, budget, onmove) {
  const picture = el("div.curve");
  const reading = el("p.reading");
  const slider = el("input", {
    id: idOf("budgetSlider"), type: "range", min: 0, max: curve.reach, step: stepFor(curve.reach), value: budget,
    oninput: event => {
      move(Number(event.target.value));
      onmove(event.target.value);
    },
  });
  const move = amount => {
    slider.value = amount;
    slider.setAttribute("aria-valuetext", readingText(curve, amount));
    reading.textContent = readingText(curve, amount);
    replace(picture, chart(curve, amount, Math.max(picture.clientWidth, 240)));
  };
  new ResizeObserver(() => move(Number(slider.value))).observe(picture);
  move(budget);
  const content = [
    el("p.quiet", say("curveLead")),
    curve.notes.map(({ text }) => el("p", text)),
    picture,
    el("div.slider", el("label", { class: "unseen", for: idOf("budgetSlider") }, say("field.budget")), slider),
    reading,
    takeSuggestion(curve, onmove),
  ];
  return { content, move };
}

const stepFor = reach => (reach <= 200 ? 1 : reach <= 2000 ? 5 : 10 ** Math.floor(Math.log10(reach / 200)));

function readingText({ points, currency }, budget) {
  const point = pointAt(points, budget);
  return point
    ? say("curveReading", {
      budget: moneyText(budget, currency, 0), price: moneyText(point.totalPrice, currency), served: percentText(point.servedPercent),
      step: stepText(point.largestStep), count: point.itemIds.length,
    })
    : say("curveNothing", { budget: moneyText(budget, currency, 0) });
}

function takeSuggestion({ points, currency }, onmove) {
  const point = points.find(one => one.suggested);
  return point && button(say("takeSuggestion", { price: moneyText(point.totalPrice, currency) }), () => onmove(String(point.totalPrice), true));
}

function chart(curve, budget, width) {
  const scale = scaleOf(curve, width);
  return draw("svg", { viewBox: `0 0 ${width} ${height}`, width, height, role: "img", "aria-label": readingText(curve, budget) },
    axes(curve, scale, width),
    scale.seen.length > 0 && draw("path", { class: "line", d: staircase(scale, width) }),
    scale.seen.map(point => draw("rect", {
      class: point.suggested ? "point suggested" : "point", x: scale.x(point.totalPrice) - 4, y: scale.y(point.largestStep) - 4, width: 8, height: 8,
    })),
    suggestion(scale, width),
    draw("line", { class: "now", x1: scale.x(budget), x2: scale.x(budget), y1: margin.top, y2: height - margin.bottom }));
}

/** With nothing to look through there is no step. */
function scaleOf({ points, reach }, width) {
  const seen = points.filter(point => point.largestStep !== null);
  const top = Math.log(Math.max(1.6, ...seen.map(point => point.largestStep)) * 1.08);
  const [right, bottom] = [width - margin.right, height - margin.bottom];
  return {
    seen,
    top,
    x: money => margin.left + (right - margin.left) * Math.min(money / reach, 1),
    y: step => bottom - (bottom - margin.top) * Math.log(step) / top,
  };
}

function staircase({ seen, x, y }, width) {
  const [first, ...rest] = seen;
  const steps = rest.map(point => `H${x(point.totalPrice)}V${y(point.largestStep)}`).join("");
  return `M${x(first.totalPrice)} ${y(first.largestStep)}${steps}H${width - margin.right}`;
}

function suggestion({ seen, x, y }, width) {
  const point = seen.find(one => one.suggested);
  const isRight = point && x(point.totalPrice) > width / 2;
  return point ? draw("text", {
    class: "strong", x: x(point.totalPrice) + (isRight ? -8 : 8), y: y(point.largestStep) - 9, "text-anchor": isRight ? "end" : "start",
  }, say("suggested")) : null;
}

function axes({ reach, currency }, { x, y, top }, width) {
  const bottom = height - margin.bottom;
  const ticks = width < 420 ? 2 : 4;
  return [
    draw("text", { x: 0, y: 10 }, say("curveAxis")),
    draw("line", { x1: margin.left, x2: width - margin.right, y1: bottom, y2: bottom }),
    Array.from({ length: ticks + 1 }, (_, index) => reach * index / ticks).map((money, index) => [
      draw("line", { x1: x(money), x2: x(money), y1: bottom, y2: bottom + 5 }),
      draw("text", { x: x(money), y: bottom + 20, "text-anchor": index === 0 ? "start" : index === ticks ? "end" : "middle" }, moneyText(money, currency, 0)),
    ]),
    stepTicks.filter(step => Math.log(step) <= top).map(step => [
      draw("line", { class: "grid", x1: margin.left, x2: width - margin.right, y1: y(step), y2: y(step) }),
      draw("text", { x: margin.left - 8, y: y(step) + 4, "text-anchor": "end" }, numberText(step, 1)),
    ]),
  ];
}

