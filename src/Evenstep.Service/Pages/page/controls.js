// Controls with label, hint and error. A control's name is also its id, for focus and errors to find it.
import { el, replace } from "./dom.js";
import { say } from "./texts.js";

export const idOf = name => `c-${name}`;

export const focusOn = name => document.getElementById(idOf(name))?.focus();

export function textField(name, { label, unit, hint, value, oninput, numeric = true, beside }) {
  const input = el("input", {
    ...described(name, hint), type: "text", inputmode: numeric ? "decimal" : "text", maxlength: 200, value, oninput: event => oninput(event.target.value),
  });
  return el("div.field", labelFor(name, label, unit), beside ? el("div.pair", input, beside) : input, hintOf(name, hint), errorOf(name));
}

/** A choice of one; options are [value, text] or { label, options }. */
export function choiceField(name, { label, hint, value, options, onchange }) {
  const select = el("select", { ...described(name, hint), onchange: event => onchange(event.target.value) }, options.map(optionOf));
  select.value = value;
  return el("div.field", labelFor(name, label), select, hintOf(name, hint), errorOf(name));
}

export function bareChoice(name, { label, value, options, onchange }) {
  const select = el("select", { id: idOf(name), "aria-label": label, onchange: event => onchange(event.target.value) }, options.map(optionOf));
  select.value = value;
  return select;
}

export function checkField(name, { label, hint, value, onchange }) {
  const input = el("input", { ...described(name, hint), type: "checkbox", checked: value, onchange: event => onchange(event.target.checked) });
  return el("div.field.check", el("label", input, el("span", label)), hintOf(name, hint), errorOf(name));
}

/** Takes what is typed or chosen into the form's state. */
export const into = (row, name, then) => value => {
  row[name] = value;
  then();
};

export const button = (label, onclick, attributes) => el("button", { type: "button", onclick, ...attributes }, label);

export const removal = (name, onclick) => button(say("remove"), onclick, { class: "slight", "aria-label": say("removeNamed", { name }) });

export const chip = (text, onclick) => el("li.chip", el("span", text), removal(text, onclick));

export const errorOf = name => el("p", { class: "error", id: `${idOf(name)}-error`, hidden: true });

/** Messages are [{ lead, text }], the text in English. Undefined if there is no such control. */
export function showError(name, messages) {
  const place = document.getElementById(`${idOf(name)}-error`);
  if (place) {
    place.hidden = false;
    place.append(...messages.map(({ lead, text }) => el("span", lead, el("span", { lang: "en" }, text))));
    document.getElementById(idOf(name))?.setAttribute("aria-invalid", "true");
    openAround(place);
  }

  return place;
}

export function clearErrors(root) {
  root.querySelectorAll(".error").forEach(place => {
    replace(place).hidden = true;
  });
  root.querySelectorAll("[aria-invalid]").forEach(control => control.removeAttribute("aria-invalid"));
}

/** Leaves the focus, and the place in a text, where they were. */
export function keepingFocus(build) {
  const { id, selectionStart, selectionEnd } = document.activeElement ?? {};
  build();
  const again = id ? document.getElementById(id) : null;
  again?.focus({ preventScroll: true });
  if (again?.type === "text") {
    again.setSelectionRange(selectionStart, selectionEnd);
  }
}

const openAround = place => {
  for (let around = place.closest("details"); around; around = around.parentElement.closest("details")) {
    around.open = true;
  }
};

const described = (name, hint) => ({ id: idOf(name), "aria-describedby": `${hint ? `${idOf(name)}-hint ` : ""}${idOf(name)}-error` });

const labelFor = (name, label, unit) => el("label", { for: idOf(name) }, label, unit && el("span.unit", ` ${unit}`));

const hintOf = (name, hint) => (hint && el("p", { class: "hint", id: `${idOf(name)}-hint` }, hint));

const optionOf = option => (Array.isArray(option)
  ? el("option", { value: option[0] }, option[1])
  : el("optgroup", { label: option.label }, option.options.map(optionOf)));

export const copyButton = (label, name, text) => button(label, async () => {
  const done = await copy(text());
  document.getElementById(idOf("copied")).textContent = done ? say("copied") : "";
}, { id: idOf(name) });

/** Over plain HTTP there is no clipboard: then it is copied by hand. */
async function copy(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    const place = el("textarea", { readonly: true, rows: 3, "aria-label": say("copyByHand") }, text);
    const around = document.getElementById(idOf("copied"));
    replace(around, el("p", say("copyByHand")), place);
    place.select();
    return false;
  }
}
