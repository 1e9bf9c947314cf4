// The parts of the advice, in their order; each hides while it is empty.
import { el, replace } from "./dom.js";
import { say } from "./texts.js";

const parts = ["views", "purchases", "ladder", "curve", "targets", "path", "opinion", "remarks", "takeaway"];
const printed = ["views", "purchases", "ladder", "remarks"];

export function layOut(root) {
  root.setAttribute("aria-labelledby", "advice-title");
  replace(
    root,
    el("div", { id: "for-print" }),
    el("h2", { id: "advice-title", class: "unseen" }, say("adviceTitle")),
    el("div", { id: "problem", class: "problem", role: "group", "aria-label": say("problemTitle"), hidden: true }),
    el("div", { id: "summary" }),
    parts.map(name => el(
      "section", { id: `part-${name}`, class: printed.includes(name) ? "part" : "part unprinted", "aria-labelledby": `title-${name}`, hidden: true },
      el("h2", { id: `title-${name}` }, say(`part.${name}`)),
      el("div.body"))));
}

export function fillPart(name, ...children) {
  const part = document.getElementById(`part-${name}`);
  const body = part.querySelector(".body");
  replace(body, ...children);
  part.hidden = body.childNodes.length === 0;
}

export function showProblem(...children) {
  const place = document.getElementById("problem");
  replace(place, ...children);
  place.hidden = place.childNodes.length === 0;
}
