// The ladder that the service draws. The page's policy lets no style in as markup, so its rules are adopted as a sheet;
// of the rest only drawing is kept.
import { el } from "./dom.js";
import { say } from "./texts.js";

const drawing = new Set(["svg", "title", "desc", "g", "path", "line", "rect", "circle", "ellipse", "polyline", "polygon", "text", "tspan", "defs", "pattern", "clipPath", "use", "symbol", "marker", "mask", "linearGradient", "stop"]);

export async function ladderOf(blob) {
  const root = new DOMParser().parseFromString(await blob.text(), "image/svg+xml").documentElement;
  if (root.localName !== "svg") {
    return null;
  }

  const sheet = new CSSStyleSheet();
  sheet.replaceSync([...root.querySelectorAll("style")].map(style => style.textContent).join("\n"));
  keepDrawing(root);
  const frame = el("div", { class: "ladder" });
  const shadow = frame.attachShadow({ mode: "open" });
  shadow.adoptedStyleSheets = [sheet, ownSheet()];
  shadow.append(document.importNode(root, true));
  return el("figure", { "aria-label": say("part.ladder") }, frame);
}

function keepDrawing(node) {
  [...node.attributes].filter(({ name, value }) => /^on/i.test(name) || name === "style" || (/href$/i.test(name) && !value.startsWith("#"))).forEach(({ name }) => node.removeAttribute(name));
  [...node.children].forEach(child => (drawing.has(child.localName) ? keepDrawing(child) : child.remove()));
}

function ownSheet() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync("svg { display: block; width: 100%; height: auto; margin: 0; }");
  return sheet;
}
