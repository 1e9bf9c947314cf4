// The sections of the form.
import { el, replace } from "./dom.js";
import { say, unitText } from "./texts.js";
import { fieldNamed, interests, preferences } from "./fields.js";
import { checkField, choiceField, errorOf, keepingFocus, textField } from "./controls.js";
import { telescopeRows } from "./telescopes.js";
import { frameRows, idPicker, leftOut, ownedRows } from "./rows.js";
import { catalogueCurrency, hasItems } from "./catalogue.js";

/** `form.changed(rebuild)` is called after every change, with true where the form has to be built anew. */
export function showForm(form) {
  keepingFocus(() => replace(
    form.root,
    form.isExample ? el("p", { class: "lead" }, say("formLead")) : null,
    section("telescope", telescopeRows(form)),
    section("owned", ownedRows(form)),
    section("observer", observerFields(form)),
    section("purchase", purchaseFields(form)),
    section("frame", frameRows(form)),
    moreFields(form),
    opinionFields(form),
    el("a", { class: "to-advice", href: "#advice", onclick: form.goToAdvice }, say("seeAdvice"))));
}

function observerFields(form) {
  return [
    el("div", { class: "row" }, field(form, "age"), field(form, "seeingArcsec")),
    field(form, "wearsSpectacles"),
    form.state.wearsSpectacles ? field(form, "astigmatismDioptres") : null,
    interestFields(form),
  ];
}

const interestFields = form => el("fieldset", { class: "plain" },
  el("legend", {}, say("field.observes")),
  el("div", { class: "checks" }, interests.map(interest => checkField(`observes.${interest}`, {
    label: say(`interest.${interest}`),
    value: form.state.observes.includes(interest),
    onchange: on => {
      form.state.observes = interests.filter(one => (one === interest ? on : form.state.observes.includes(one)));
      form.changed();
    },
  }))),
  errorOf("observes"));

const purchaseFields = form => [
  el("div", { class: "row" }, field(form, "budget"), field(form, "maxPurchases")),
  field(form, "prefer"),
  el("div", { class: "row" }, field(form, "barlows"), field(form, "zooms")),
  leftOut(form),
];

const moreFields = form => el("details", { class: "section", open: form.root.querySelector("details.section")?.open },
  el("summary", {}, say("section.more")),
  el("div", { class: "row" }, field(form, "pupilMm"), field(form, "leastEyeReliefMm")),
  el("div", { class: "row" }, field(form, "maxPricePerItem"), field(form, "maxItemMassGrams")),
  el("div", { class: "row" }, field(form, "maxBarlows"), field(form, "allowedOverlaps")),
  el("div", { class: "row" }, field(form, "enoughStep"), field(form, "leastStep")),
  el("div", { class: "row" }, field(form, "leastApparentFieldDeg"), field(form, "leastPower")),
  idPicker(form, "mustInclude"));

const opinionFields = form => hasItems() && section("opinion", [el("p", { class: "hint" }, say("opinionHint")), idPicker(form, "shoppingList")]);

function section(name, ...children) {
  const id = `section-${name}`;
  return el("section", { class: "section", "aria-labelledby": id }, el("h2", { id }, say(`section.${name}`)), children);
}

function field(form, name) {
  const { kind, unit } = fieldNamed[name];
  const common = { label: say(`field.${name}`), hint: say(`hint.${name}`), value: form.state[name] };
  const set = rebuild => value => {
    form.state[name] = value;
    form.changed(rebuild);
  };
  return kind === "flag" ? checkField(name, { ...common, onchange: set(name === "wearsSpectacles") })
    : kind === "choice" ? choiceField(name, { ...common, options: preferences.map(value => [value, say(`prefer.${value}`)]), onchange: set() })
    : textField(name, { ...common, unit: unit === "money" ? catalogueCurrency() : unitText(unit), oninput: set() });
}
