// Elements. What is said in them becomes text nodes and attributes, never markup.

const svgNamespace = "http://www.w3.org/2000/svg";

/** `el("p.hint", { id: "x" }, child, …)`; attributes may be left out. */
export function el(name, ...rest) {
  const [tag, ...classes] = name.split(".");
  const node = document.createElement(tag);
  node.classList.add(...classes);
  return filled(node, rest[0]?.constructor === Object ? rest.shift() : {}, rest);
}

export const draw = (name, attributes, ...children) => filled(document.createElementNS(svgNamespace, name), attributes, children);

export function replace(parent, ...children) {
  parent.replaceChildren(...present(children));
  return parent;
}

export const sentences = texts => el("ul.sentences", texts.map(text => el("li", text)));

/** Only a web address makes a link. */
export const isWebAddress = text => /^https?:\/\//i.test(text ?? "");

function filled(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) {
      node.addEventListener(name.slice(2), value);
    } else if (value !== undefined && value !== null && value !== false) {
      node.setAttribute(name, value === true ? "" : value);
    }
  }

  node.append(...present(children));
  return node;
}

const present = children => children.flat(Infinity).filter(child => child !== undefined && child !== null && child !== false);
