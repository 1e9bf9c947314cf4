// A link, and the sheet for the customer.
import { el, replace } from "./dom.js";
import { dateText, numberText, say, unitText } from "./texts.js";
import { button, copyButton, idOf } from "./controls.js";
import { telescopeOf } from "./catalogue.js";
import { interests } from "./fields.js";

export function takeawayOf(body, answer, link) {
  return [
    el("div.buttons",
      button(say("print"), () => window.print(), { class: "main" }),
      copyButton(say("copyLink"), "link", () => link())),
    el("div", { class: "copied", "aria-live": "polite", id: idOf("copied") }),
    el("details", { ontoggle: ({ target }) => fill(target, body, answer) }, el("summary", say("forDevelopers"))),
  ];
}

/** Fetched only by whoever opens it. */
async function fill(details, body, answer) {
  if (details.childElementCount === 1) {
    details.append(...(await import("./developers.js")).requestAndAnswer(body, answer));
  }
}

export function showPrintHead(state, answer, ownedNames) {
  replace(
    document.getElementById("for-print"),
    el("p.print-title", say("printTitle")),
    el("p", [
      ...answer.telescopes.map(({ name }, index) => `${name}${factsOf(state.telescopes[index])}`),
      state.age && say("printAge", { age: state.age }),
      state.wearsSpectacles && say("field.wearsSpectacles"),
      state.observes.length > 0 && interests.filter(one => state.observes.includes(one)).map(one => say(`interest.${one}`)).join(", "),
      ownedNames.length > 0 && say("printOwned", { items: ownedNames.join(", ") }),
    ].filter(Boolean).join(" · ")),
    el("p", dateText(new Date())));
}

function factsOf(telescope) {
  const listed = telescopeOf(telescope?.id);
  return listed ? ` (${numberText(listed.apertureMm)}/${numberText(listed.focalLengthMm)} mm)`
    : telescope?.id === ""
      ? ` (${telescope.apertureMm} ${unitText(telescope.apertureUnit)}, ${telescope.focalLengthMm} ${unitText(telescope.focalLengthUnit)})`
      : "";
}
