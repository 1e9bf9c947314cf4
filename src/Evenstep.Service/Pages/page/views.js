// What the observer will see: the sky framed, how bright, and only then the power.
import { draw, el, sentences } from "./dom.js";
import { millimetresText, numberText, powerText, rangeText, say } from "./texts.js";
import { nameOf } from "./catalogue.js";

/** The full Moon's mean width, about half a degree. */
const moonDeg = 0.52;

/** Brightness by exit pupil, in words: common practice, no source. */
const brightnesses = [{ least: 4, bars: 4 }, { least: 2, bars: 3 }, { least: 1, bars: 2 }, { least: 0, bars: 1 }];

export const usableViews = ladder => ladder.views.filter(view => view.usable);

export function brightnessOf(exitPupilMm) {
  const { bars } = brightnesses.find(one => exitPupilMm >= one.least);
  return { bars, word: say(`brightness.${bars}`) };
}

export const moonsText = deg => say("moons", { moons: numberText(deg / moonDeg, 1) });

export const throughText = ({ eyepieceId, barlowId, factor }) => (barlowId
  ? say("throughBarlow", { eyepiece: nameOf(eyepieceId), barlow: nameOf(barlowId), factor: numberText(factor, 2) })
  : nameOf(eyepieceId));

export function viewsOf(telescopes, bought) {
  const widest = Math.max(...telescopes.flatMap(({ after }) => usableViews(after).map(view => view.trueFieldDeg)));
  return telescopes.map(telescope => [
    telescopes.length > 1 && el("h3", telescope.name),
    el("ol.views", usableViews(telescope.after).map(view => viewOf(view, widest, bought))),
    unusedOf(telescope.after),
  ]);
}

function viewOf(view, widest, bought) {
  const isNew = bought.has(view.eyepieceId) || bought.has(view.barlowId);
  const { bars, word } = brightnessOf(view.exitPupilMm);
  return el("li",
    ruler(view.trueFieldDeg, widest, isNew),
    el("span", el("strong", `${numberText(view.trueFieldDeg, 2)}°`), el("span.quiet", ` ${moonsText(view.trueFieldDeg)}`)),
    el("span.light", meter(bars), word, el("span.quiet", ` ${say("exitPupil", { mm: millimetresText(view.exitPupilMm) })}`)),
    el("span", view.powerAtShortest ? rangeText(view.power, view.powerAtShortest) : powerText(view.power)),
    el("span.through", throughText(view), isNew && el("span.tag", say("new")), drawbacksOf(view)));
}

function drawbacksOf({ drawbacks }) {
  const words = drawbacks.map(code => say(`drawback.${code}`)).join(", ");
  return words !== "" && el("span.quiet", ` ${say("drawbacks", { drawbacks: words })}`);
}

/** The field of view as a ruler whose divisions are full Moons; what is new is hatched. */
function ruler(fieldDeg, widestDeg, isNew) {
  const bar = el("span", { class: isNew ? "ruler new" : "ruler", "aria-hidden": "true" });
  bar.style.setProperty("--width", `${100 * fieldDeg / widestDeg}%`);
  bar.style.setProperty("--moon", `${100 * moonDeg / fieldDeg}%`);
  return bar;
}

const meter = bars => draw("svg", { class: "meter", viewBox: "0 0 22 12", "aria-hidden": "true" },
  [0, 1, 2, 3].map(index => draw("rect", { class: index < bars ? "lit" : "", x: 1 + index * 5.4, y: 1, width: 3.6, height: 10 })));

function unusedOf(ladder) {
  const unused = ladder.views.filter(view => !view.usable);
  return unused.length === 0 ? null : el("details.unprinted",
    el("summary", say("unusedViews", { count: unused.length })),
    sentences(unused.map(view => `${throughText(view)}: ${powerText(view.power)}, ${say(`unusable.${view.notUsableBecause}`)}`)));
}
